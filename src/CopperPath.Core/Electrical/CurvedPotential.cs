namespace CopperPath.Electrical;

/// <summary>A potential that is quadratic in every triangle.</summary>
/// <param name="MemberV">Potential of every member of the node map, volts; not a number on copper no terminal reaches.</param>
/// <param name="LinearV">The potential that is linear in every triangle and solves the same equations, likewise: a poorer one to compare with.</param>
/// <param name="BulgesV">For each sheet, by corner, the bulge along the edge opposite, volts.</param>
/// <param name="RelativeResidual">
/// Norm of what is left of the linear shape functions' equations over that of the currents: rounding only.
/// </param>
internal sealed record CurvedPotential(double[] MemberV, double[] LinearV, double[][] BulgesV, double RelativeResidual);
