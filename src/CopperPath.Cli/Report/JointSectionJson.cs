using System.Text.Json;
using CopperPath.Electrical;
using CopperPath.Judging;

namespace CopperPath.Cli.Report;

/// <summary>Sections through copper that carries a current together, and the lengths that belong to any section, for other programs.</summary>
internal static class JointSectionJson
{
    private const int Shown = 10;

    public static void Write(Utf8JsonWriter json, Stretch stretch, ConductorRating rating)
    {
        json.WriteStartArray("jointSections");
        foreach (JointSection section in stretch.Joint.Take(Shown))
        {
            json.WriteStartObject();
            WriteCopper(json, section, rating.Stack);
            json.WriteNumberOrNull("riseK", rating.JointRiseK(section));
            json.WriteNumberOrNull("riseByOtherRelationK", rating.Other.JointRiseK(section));
            json.WriteBoolean("isInRange", rating.CanJudge(section));
            WriteNeck(json, NeckFigures.Of(section, rating));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (stretch.Solved.Joint.Least is { } least)
        {
            json.WriteStartObject("leastSection");
            WriteCopper(json, least, rating.Stack);
            json.WriteEndObject();
        }
    }

    public static void WriteNeck(Utf8JsonWriter json, NeckFigures? neck)
    {
        if (neck is not null)
        {
            json.WriteNumberOrNull("neckLengthM", neck.LengthM);
            json.WriteNumberOrNull("heatLengthM", neck.HeatLengthM);
            json.WriteNumberOrNull("shortNeckRiseK", neck.ShortNeckK);
        }
    }

    private static void WriteCopper(Utf8JsonWriter json, JointSection section, Stackup stack)
    {
        json.WriteNumber("layer", section.AtLayer);
        json.WriteNumberOrNull("xM", section.AtXM);
        json.WriteNumberOrNull("yM", section.AtYM);
        json.WriteNumberOrNull("sectionM2", section.SectionM2(stack));
        json.WriteNumberOrNull("currentA", section.CurrentA);
        json.WriteNumberOrNull("potentialV", section.PotentialV);
        json.WriteBoolean("isClosed", section.IsClosed);
        json.WriteNumber("platedHoles", section.Holes.Count);
        json.WriteStartArray("layers");
        foreach (JointLayer layer in section.Layers)
        {
            json.WriteStartObject();
            json.WriteNumber("layer", layer.Layer);
            json.WriteNumberOrNull("widthM", layer.WidthM);
            json.WriteNumber("pieces", layer.LineCount);
            json.WriteNumberOrNull("currentA", layer.CurrentA);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
