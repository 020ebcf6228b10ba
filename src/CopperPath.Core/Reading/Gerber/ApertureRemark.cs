namespace CopperPath.Reading.Gerber;

/// <summary>What was odd about an aperture's parameters, or why no shape could be made of them.</summary>
internal readonly record struct ApertureRemark(string Code, string Found, string Expected, bool Rejects);
