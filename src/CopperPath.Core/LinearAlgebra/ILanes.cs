using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CopperPath.LinearAlgebra;

/// <summary>A few vectors side by side, calculated with as one.</summary>
internal interface ILanes<T>
    where T : struct, ILanes<T>
{
    /// <summary>Numbers held.</summary>
    static abstract int Count { get; }

    static abstract T Load(ref double source);

    /// <summary>factor · values + sum.</summary>
    static abstract T MultiplyAdd(double factor, T values, T sum);

    static abstract T operator +(T left, T right);

    static abstract T operator -(T left, T right);

    static abstract T operator /(T left, double right);

    void Store(ref double target);
}

/// <summary>Four numbers.</summary>
internal readonly struct FourLanes(Vector256<double> a) : ILanes<FourLanes>
{
    private readonly Vector256<double> _a = a;

    public static int Count => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Load(ref double source) => new(Vector256.LoadUnsafe(ref source));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes MultiplyAdd(double factor, FourLanes values, FourLanes sum) =>
        new(Vector256.FusedMultiplyAdd(Vector256.Create(factor), values._a, sum._a));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator +(FourLanes left, FourLanes right) => new(left._a + right._a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator -(FourLanes left, FourLanes right) => new(left._a - right._a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator /(FourLanes left, double right) => new(left._a / Vector256.Create(right));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(ref double target) => _a.StoreUnsafe(ref target);
}

/// <summary>Twelve numbers: as many as leave the registers room for three rows at a time.</summary>
internal readonly struct TwelveLanes(Vector256<double> a, Vector256<double> b, Vector256<double> c) : ILanes<TwelveLanes>
{
    private readonly Vector256<double> _a = a;
    private readonly Vector256<double> _b = b;
    private readonly Vector256<double> _c = c;

    public static int Count => 12;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwelveLanes Load(ref double source) =>
        new(Vector256.LoadUnsafe(ref source), Vector256.LoadUnsafe(ref source, 4), Vector256.LoadUnsafe(ref source, 8));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwelveLanes MultiplyAdd(double factor, TwelveLanes values, TwelveLanes sum)
    {
        Vector256<double> factors = Vector256.Create(factor);
        return new(
            Vector256.FusedMultiplyAdd(factors, values._a, sum._a),
            Vector256.FusedMultiplyAdd(factors, values._b, sum._b),
            Vector256.FusedMultiplyAdd(factors, values._c, sum._c));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwelveLanes operator +(TwelveLanes left, TwelveLanes right) =>
        new(left._a + right._a, left._b + right._b, left._c + right._c);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwelveLanes operator -(TwelveLanes left, TwelveLanes right) =>
        new(left._a - right._a, left._b - right._b, left._c - right._c);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwelveLanes operator /(TwelveLanes left, double right)
    {
        Vector256<double> divisor = Vector256.Create(right);
        return new(left._a / divisor, left._b / divisor, left._c / divisor);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(ref double target)
    {
        _a.StoreUnsafe(ref target);
        _b.StoreUnsafe(ref target, 4);
        _c.StoreUnsafe(ref target, 8);
    }
}
