using CopperPath.Nets;
using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Nets;

public sealed class NamedBoardsTests
{
    [Theory]
    [InlineData("bitaxe-ultra")]
    [InlineData("eez-aux-ps")]
    [InlineData("esp32-poe-b2")]
    [InlineData("picopd-v12")]
    [InlineData("thunderscope-r53")]
    [InlineData("opsis")]
    [InlineData("vesc-4")]
    [InlineData("sonata-one-r09")]
    [InlineData("simplefoc-powershield")]
    [InlineData("micro-driver-v2")]
    [InlineData("eez-dcp405-r4")]
    public void X(string board)
    {
        NetList nets = Analysis.Survey(SharedData.Require("boards-open", board)).Board.Nets.ShouldNotBeNull();
        NameAgreement a = new(nets);
        TestContext.Current.TestOutputHelper!.WriteLine($"{board} named {a.Named} off {a.OffCopper} names {a.Names} agreeing {a.Agreeing}");
        foreach (var m in a.Merged) TestContext.Current.TestOutputHelper!.WriteLine("  merged " + string.Join(", ", m));
        foreach (var (n, p) in a.Split) TestContext.Current.TestOutputHelper!.WriteLine($"  split {n}: " + string.Join("; ", p.Select(o => $"{o.Position} {o.Kind} {o.Labels.Pin?.Text} {o.Labels.ApertureFunction} {o.Anchor}")));

        foreach (var d in nets.Diagnostics.Where(d => d.Code is "NET007" or "NET008")) TestContext.Current.TestOutputHelper!.WriteLine("  diag " + d);
        if (board != "zz") return;
        void P(string t) => TestContext.Current.TestOutputHelper!.WriteLine(t);
        foreach (var m in a.Merged)
        {
            Net net = nets.Nets.First(n => m.Contains(n.Name));
            P($" net {net.Name} [{string.Join(", ", m)}]");
            foreach (var sheet in net.Sheets)
            {
                var loc = new PolygonLocator(sheet.Islands);
                var layer = nets.Layers.Single(l => l.Number == sheet.Layer);
                var on = layer.Artwork.Objects.Where(o => o.Polarity == Polarity.Dark && RepresentativePoints.Of(o).Any(p => loc.Find(p) >= 0)).ToArray();
                foreach (var o in on.Where(o => o.Labels.Nets.Count != 1)) P($"   nameless {o.Position} {o.Kind} {o.Anchor} {o.Rings.Sum(r=>r.Length)} {o.Labels.ApertureFunction} {o.Labels.Component} {string.Join("+", o.Labels.Nets)}");
                foreach (var o in on.Where(o => o.Labels.Nets.Count == 1))
                foreach (var q in on.Where(q => q.Labels.Nets.Count == 1 && string.CompareOrdinal(q.Labels.Nets[0], o.Labels.Nets[0]) > 0))
                {
                    var ra = o.Rings.Select(r => Array.ConvertAll(r, x => x + o.Offset)).ToArray();
                    var rb = q.Rings.Select(r => Array.ConvertAll(r, x => x + q.Offset)).ToArray();
                    double ar = PolygonOperations.Intersect(ra, rb).Sum(x => x.AreaNm2);
                    if (ar > 0) P($"   overlap {ar/1e12} mm2 {o.Position} {o.Labels.Nets[0]} {o.Labels.Pin?.Text} {o.Kind} & {q.Position} {q.Labels.Nets[0]} {q.Labels.Pin?.Text} {q.Kind}");
                }
            }
        }

        foreach (var (n, p) in a.Split)
        {
            P($" split {n}");
            foreach (var o in p)
            {
                Net net = nets.Nets.First(x => x.Pads.Any(q => q.Shape == o));
                P($"   {net.Name} area {net.AreaM2*1e6} mm2 layers {string.Join(",", net.Sheets.Select(s => s.Layer + ":" + s.Islands.Count))} pads {net.Pads.Count} {string.Join(",", net.Pads.Take(5).Select(q => q.Pin?.Text))} barrels {net.Barrels.Count}");
                if (net.Pads.Count > 60) continue;
                foreach (var h in nets.Holes.Where(h => net.Sheets.Any(s => s.Islands.Any(i => i.Bounds.GrownBy(100000).Contains(h.Feature.Path[0]))))) P($"       hole {h.Feature.Position} {h.IsPlated} {h.Feature.ToolDiameterNm} {string.Join(" ", h.Layers.Select(l => l.Layer + ":" + l.Share))}");
            }
        }
    }
}
