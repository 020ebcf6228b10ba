namespace CopperPath.Reading.BoardFiles;

/// <summary>What a role rests on, weakest first.</summary>
public enum Evidence
{
    /// <summary>The file name only.</summary>
    Name,

    /// <summary>The kind of content found in the file.</summary>
    Content,

    /// <summary>The job file beside it.</summary>
    JobFile,

    /// <summary>The file's own <c>.FileFunction</c>.</summary>
    Declared,

    /// <summary>The user's own statement.</summary>
    Override,
}
