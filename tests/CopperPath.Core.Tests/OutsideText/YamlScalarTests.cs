using CopperPath.Core.Tests.Gallery;
using CopperPath.OutsideText;
using YamlDotNet.RepresentationModel;

namespace CopperPath.Core.Tests.OutsideText;

/// <summary>A quoted scalar is one value on one line. Oracle: the YAML library's own reader.</summary>
public sealed class YamlScalarTests
{
    [Fact]
    public void AnyNameIsReadBackAsItWas()
    {
        foreach (string name in HostileText.Names(seed: 2, count: 1_000))
        {
            string scalar = YamlScalar.Quoted(name);
            HostileText.ActingIn(scalar).ShouldBeEmpty();
            YamlMappingNode root = Read($"net: {scalar}\nflow: {{ pins: [{scalar}, {scalar}], last: 1 }}\n");

            root.Children.Count.ShouldBe(2);
            root["net"].ShouldBe(new YamlScalarNode(name));
            root["flow"]["pins"][1].ShouldBe(new YamlScalarNode(name));
            root["flow"]["last"].ShouldBe(new YamlScalarNode("1"));
        }
    }

    [Theory]
    [InlineData("VOUT", "'VOUT'")]
    [InlineData("it's", "'it''s'")]
    [InlineData("a\nwaivers:", "\"a\\u000Awaivers:\"")]
    [InlineData("\U000E0041\"\\", "\"\\U000E0041\\\"\\\\\"")]
    public void OnlyWhatIsNotSeenNeedsEscapes(string name, string scalar) => YamlScalar.Quoted(name).ShouldBe(scalar);

    [Fact]
    public void HalfASurrogatePairIsTheReplacementCharacter() =>
        Read($"net: {YamlScalar.Quoted("a" + (char)0xD800)}\n")["net"].ShouldBe(new YamlScalarNode("a\uFFFD"));

    private static YamlMappingNode Read(string text)
    {
        YamlStream stream = new();
        stream.Load(new StringReader(text));
        return (YamlMappingNode)stream.Documents.ShouldHaveSingleItem().RootNode;
    }
}
