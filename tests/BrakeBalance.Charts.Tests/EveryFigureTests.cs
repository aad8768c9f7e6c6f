using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Tests;

public partial class EveryFigureTests
{
    public static TheoryData<string, UnitSystem> EveryCar
    {
        get
        {
            TheoryData<string, UnitSystem> data = [];
            foreach (string name in Cars.Names)
            {
                data.Add(name, UnitSystem.Si);
                data.Add(name, UnitSystem.Us);
            }

            return data;
        }
    }

    [Fact]
    public void There_are_three_invented_cars_and_each_says_so() =>
        Assert.All(Cars.Names.Where((_, i) => i < 3).Append(Cars.Names[^1]), name =>
            Assert.Contains("nvented", Cars.Load(name).Note, StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Axis_titles_and_table_columns_carry_units(string car, UnitSystem units)
    {
        foreach (Figure figure in Cars.Figures(car, units))
        {
            Assert.True(figure.XAxis.Categories is not null || figure.XAxis.Title(units).EndsWith(']'));
            Assert.Matches(@"\[.+\]$", figure.YAxis.Title(units));
            Assert.All(
                figure.Table.Columns.Where((_, i) => figure.Table.IsNumeric(i)),
                column => Assert.Matches(@"\[.+\]$", column));
            string[] foreign = units == UnitSystem.Us ? ["[bar]", "[kN]", "[N]"] : ["[psi]", "[lbf]"];
            Assert.DoesNotContain(figure.Table.Columns.Append(figure.XAxis.Title(units)).Append(figure.YAxis.Title(units)), text =>
                foreign.Any(text.Contains));
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Words_are_there_and_short_enough(string car, UnitSystem units)
    {
        foreach (Figure figure in Cars.Figures(car, units))
        {
            Assert.InRange(figure.AltText.Length, 20, Figure.AltTextLimit);
            Assert.InRange(figure.Caption.Split(' ').Length, 5, 40);
            Assert.InRange(figure.Title.Length, 20, 160);
            Assert.InRange(figure.LongDescription.Length, 40, 900);
            Assert.DoesNotContain("NaN", figure.ToPlainText(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Drawings_are_well_formed_with_unique_ids_and_editable_text(string car, UnitSystem units)
    {
        foreach (Figure figure in Cars.Figures(car, units))
        {
            foreach ((FigureSize size, Theme theme) in new[] { (FigureSize.Page, Theme.Light), (FigureSize.Slide, Theme.Dark),
                (FigureSize.PrintSingle, Theme.Print) })
            {
                XElement svg = XDocument.Parse(figure.ToSvg(size, theme)).Root!;
                string[] ids = [.. svg.DescendantsAndSelf().Select(e => (string?)e.Attribute("id")).OfType<string>()];
                Assert.Equal(ids.Length, ids.Distinct().Count());
                Assert.Equal(figure.AltText, svg.Elements().First(e => e.Name.LocalName == "title").Value);
                Assert.True(svg.Descendants().Count(e => e.Name.LocalName == "text") > 8);
                Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName is "script" or "image" or "foreignObject");
                foreach (Match match in Reference().Matches(svg.ToString()))
                {
                    Assert.Contains(match.Groups[1].Value, ids);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Labels_overlap_neither_each_other_nor_the_edge_at_any_size(string car, UnitSystem units)
    {
        FigureSize[] sizes =
        [
            FigureSize.Page, FigureSize.Phone, FigureSize.Column, FigureSize.FullWidth, FigureSize.Slide, FigureSize.Square,
                FigureSize.PrintSingle, FigureSize.PrintDouble,
        ];
        foreach (Figure figure in Cars.Figures(car, units))
        {
            foreach (FigureSize size in sizes)
            {
                FigureLayout layout = FigureLayout.Of(figure, size);
                for (int i = 0; i < layout.Labels.Count; i++)
                {
                    Assert.True(layout.Plot.Contains(layout.Labels[i].Box), $"{figure.Id} {size.Name}: {layout.Labels[i]}");
                    for (int j = 0; j < i; j++)
                    {
                        Assert.False(layout.Labels[i].Box.Overlaps(layout.Labels[j].Box),
                            $"{figure.Id} {size.Name}: {layout.Labels[i]} {layout.Labels[j]}");
                    }
                }

                // Whatever has a name to show is named, beside its mark or in the key.
                int[] named = [.. layout.Labels.Select(label => label.Owner), .. layout.Keyed.Select(key => key.Owner)];
                foreach ((int owner, Layer layer) in figure.Layers.Index())
                {
                    if (layer is LineLayer line && line.LabelText.Length > 0
                        && line.X.Zip(line.Y, layout.At).Count(layout.Plot.Contains) > 2)
                    {
                        Assert.Contains(owner, named);
                    }
                }

                Assert.True(layout.Plot.Width > size.Width * 0.6
                    && layout.Plot.Height > size.Height * 0.45, $"{figure.Id} {size.Name}: plot {layout.Plot}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Live_charts_are_valid_json_without_addresses_and_with_few_points(string car, UnitSystem units)
    {
        foreach (Figure figure in Cars.Figures(car, units))
        {
            string json = figure.ToPlotlyJson();
            JsonNode node = JsonNode.Parse(json)!;
            Assert.DoesNotContain("http", json, StringComparison.Ordinal);
            Assert.Equal(figure.XAxis.Title(units), node["layout"]!["xaxis"]!["title"]!["text"]!.GetValue<string>());
            Assert.Equal(figure.YAxis.Title(units), node["layout"]!["yaxis"]!["title"]!["text"]!.GetValue<string>());
            Assert.NotEmpty(node["data"]!.AsArray());
            Assert.All(node["data"]!.AsArray(), trace => Assert.InRange(trace!["x"]!.AsArray().Count, 1, Figure.PointLimit));

            // Plotly.NET's own JSON of the chart says the same.
            JsonNode own = JsonNode.Parse(Plotly.NET.GenericChart.toFigureJson(figure.ToPlotly()))!;
            Assert.True(JsonNode.DeepEquals(Plain(own["data"]), node["data"]), figure.Id);
            Assert.True(JsonNode.DeepEquals(Plain(own["layout"]), node["layout"]), figure.Id);
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Two_runs_give_the_same_bytes_under_any_culture(string car, UnitSystem units)
    {
        string first = All();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, All());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        string All() => string.Concat(Cars.Build(car, units)
            .Select(figure => figure.ToSvg() + figure.ToHtml() + figure.ToPlotlyJson() + figure.ToPlainText()));
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Fragments_ask_nothing_of_a_network(string car, UnitSystem units)
    {
        foreach (Figure figure in Cars.Figures(car, units))
        {
            string html = figure.ToHtml().Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
            Assert.DoesNotContain("http", html, StringComparison.Ordinal);
            Assert.DoesNotContain("src=", html, StringComparison.Ordinal);
            Assert.Contains("class=\"bb-static bb-wide\"", html, StringComparison.Ordinal);
            Assert.Contains("class=\"bb-static bb-narrow\" hidden", html, StringComparison.Ordinal);
            Assert.Contains("<details class=\"bb-data\">", html, StringComparison.Ordinal);
        }
    }

    private static JsonNode? Plain(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key, Plain(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Plain)]),
        JsonValue v when v.GetValueKind() == System.Text.Json.JsonValueKind.Number => PlainJson.Number(v.GetValue<double>()),
        _ => node?.DeepClone(),
    };

    [GeneratedRegex(@"url\(#([^)]+)\)")]
    private static partial Regex Reference();
}
