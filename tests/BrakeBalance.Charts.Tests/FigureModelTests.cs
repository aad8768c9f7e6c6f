using System.Globalization;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

public class FigureModelTests
{
    private static readonly Pressure[] Front = [.. Enumerable.Range(0, 5).Select(i => Pressure.FromBars(20 * i))];
    private static readonly Pressure[] Rear = [.. Front.Select(p => Pressure.FromBars(Math.Min(p.Bars, 38 + 0.3 * (p.Bars - 38))))];

    [Fact]
    public void Axis_titles_carry_quantity_symbol_and_unit_in_both_systems()
    {
        Assert.Equal("Front line pressure p₁ [bar]", Pressures(UnitSystem.Si).XAxis.Title(UnitSystem.Si));
        Assert.Equal("Front line pressure p₁ [psi]", Pressures(UnitSystem.Us).XAxis.Title(UnitSystem.Us));
    }

    [Fact]
    public void Quantities_are_converted_once_to_the_display_unit()
    {
        // 80 bar are 1160.3 psi (1 psi = 6894.757 Pa, NIST SP 811, appendix B.8).
        JsonNode x = JsonNode.Parse(Pressures(UnitSystem.Us).ToPlotlyJson())!["data"]![1]!["x"]!;
        Assert.Equal(1160.3, x[4]!.GetValue<double>(), 0.05);
        Assert.Equal(0, x[0]!.GetValue<double>());
    }

    [Fact]
    public void The_table_names_units_in_its_columns()
    {
        Assert.Equal(["Front [bar]", "Rear [bar]"], Pressures(UnitSystem.Si).Table.Columns);
        Assert.StartsWith("Front [bar],Rear [bar]\n0,0\n20,20\n40,38.6\n", Pressures(UnitSystem.Si).Table.ToCsv(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_drawing_is_well_formed_and_names_itself()
    {
        XElement svg = XDocument.Parse(Pressures(UnitSystem.Si).ToSvg()).Root!;
        Assert.Equal(Pressures(UnitSystem.Si).AltText, svg.Elements().First(e => e.Name.LocalName == "title").Value);
        Assert.Contains(svg.Descendants(), e => e.Name.LocalName == "g" && (string?)e.Attribute("id") == "pressures-page-with-valve");
        Assert.Contains(svg.Descendants(), e => e.Name.LocalName == "text" && e.Value == "with valve");
    }

    [Fact]
    public void Output_is_the_same_under_another_culture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        string[] invariant = All();
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(invariant, All());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        static string[] All()
        {
            Figure figure = Pressures(UnitSystem.Us);
            return [figure.ToSvg(), figure.ToHtml(), figure.ToPlotlyJson(), figure.ToPlainText(), figure.Table.ToCsv()];
        }
    }

    [Fact]
    public void The_alt_text_is_kind_axes_and_finding_and_leaves_the_axes_out_where_they_do_not_fit()
    {
        Figure figure = Pressures(UnitSystem.Si);
        Assert.Equal($"Line chart, rear line pressure over front line pressure: {figure.Title}.", figure.AltText);
        string title = new('a', 150);
        Assert.Equal($"Line chart: {title}.", (figure with { Title = title }).AltText);
        Assert.Equal(figure.AltText, (figure with { Title = "Ours", Finding = figure.Title }).AltText);
    }

    [Fact]
    public void Numbers_that_are_not_finite_are_refused() =>
        Assert.Contains("number 1 of 2", Assert.Throws<ArgumentException>(() => (Series)new[] { 1, double.NaN }).Message,
            StringComparison.Ordinal);

    private static FigureBuilder Builder(UnitSystem units) => new FigureBuilder("pressures", units)
        .Title("Above the knee the rear pressure rises by a third only")
        .Describe("Rear against front line pressure.",
            "Equal up to the knee, flatter above.")
        .X("Front line pressure", "p₁", Measure.LinePressure)
        .Y("Rear line pressure", "p₂", Measure.LinePressure)
        .Line("equal pressures", Front, Front, Tone.Guide, Dash.Dot)
        .Line("with valve", Front, Rear, Tone.Rear)
        .Points("knee", new[] { Pressure.FromBars(38) }, new[] { Pressure.FromBars(38) })
        .Table(table => table.Column("Front", Measure.LinePressure, Front).Column("Rear", Measure.LinePressure, Rear));

    private static Figure Pressures(UnitSystem units) => Builder(units).Build();
}
