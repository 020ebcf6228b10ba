namespace CopperPath.LinearAlgebra;

/// <summary>Scratch memory for dissecting graphs of up to a given number of vertices, used by one thread at a time.</summary>
internal sealed class DissectionWorkspace(int vertexCount)
{
    /// <summary>Separator vertices by what moving them to side 0 or side 1 gains; empty between uses.</summary>
    public GainHeap[] Heaps { get; } = [new GainHeap(vertexCount), new GainHeap(vertexCount)];

    /// <summary>Vertices moved in the current pass; all false between uses.</summary>
    public bool[] IsMoved { get; } = new bool[vertexCount];

    /// <summary>Number of each vertex of the whole graph in a piece; −1 for all between uses.</summary>
    public int[] LocalNumber { get; } = [.. Enumerable.Repeat(-1, vertexCount)];
}
