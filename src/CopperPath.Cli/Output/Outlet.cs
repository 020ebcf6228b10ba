namespace CopperPath.Cli.Output;

/// <summary>
/// A standard stream that may be full, closed or gone. A command does its work to the end and writes its files all the same; the
/// first fault is kept, what follows it is dropped. A reader that has seen enough and went away is no fault: the runtime tells
/// nobody of it.
/// </summary>
internal sealed class Outlet(Stream stream) : Stream
{
    /// <summary>Why something was not written, or null.</summary>
    public string? Fault { get; private set; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (Fault is not null)
        {
            return;
        }

        try
        {
            stream.Write(buffer);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Fault = e.Message;
        }
    }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
