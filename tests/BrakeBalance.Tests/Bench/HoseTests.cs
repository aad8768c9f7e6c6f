using BrakeBalance.Bench;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Bench;

/// <summary>Hose assemblies: lengths, bends, pressure, buying.</summary>
public sealed class HoseTests
{
    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    private static readonly HoseDuty Duty = new() { Highest = Pressure.FromBars(95), Hottest = Temperature.FromDegreesCelsius(95) };

    private static HoseAssembly Hose(double overall = 700, double first = 30, double second = 40) => new(
        "feed", HoseRating.Find("EN 853 1SN", "-6")!,
        new HoseEnd { Fitting = "straight", CutOff = Mm(first) },
        new HoseEnd { Fitting = "straight", CutOff = Mm(second) })
    {
        OverallLength = Mm(overall),
    };

    private static BenchFinding? Found(HoseAssembly hose, string words, HoseDuty? duty = null) =>
        HoseChecks.Of(hose, duty ?? Duty).FirstOrDefault(finding => finding.What.Contains(words, StringComparison.Ordinal));

    [Property]
    public void Cut_length_and_allowances_make_the_overall_length(ushort overall, byte first, byte second)
    {
        HoseAssembly hose = Hose(overall / 10.0 + 1, first / 3.0, second / 3.0);
        Assert.Equal(hose.OverallLength.Millimeters, (hose.CutLength + hose.First.CutOff + hose.Second.CutOff).Millimeters, 1e-9);
    }

    [Property]
    public void Inches_and_millimetres_give_one_answer(ushort overall, byte first)
    {
        HoseAssembly metric = Hose(500 + (overall / 100.0), first / 10.0);
        HoseAssembly inches = metric with
        {
            OverallLength = Length.FromInches(metric.OverallLength.Inches),
            First = metric.First with { CutOff = Length.FromInches(metric.First.CutOff.Inches) },
        };
        Assert.Equal(metric.CutLength.Meters, inches.CutLength.Meters, 1e-12);
        Assert.Equal(metric.ShortestUnderPressure.Meters, inches.ShortestUnderPressure.Meters, 1e-12);
    }

    [Property]
    public void The_overall_length_for_a_route_spans_it_at_its_shortest(ushort route)
    {
        Length way = Mm(100 + (route / 20.0));
        HoseAssembly hose = Hose();
        HoseAssembly made = hose with { OverallLength = hose.OverallFor(way) };
        Assert.Equal(way.Millimeters, made.ShortestUnderPressure.Millimeters, 1e-6);
    }

    [Fact]
    public void A_hose_that_shortens_off_its_route_is_wrong_and_the_message_says_what_would_do()
    {
        BenchFinding finding = Found(Hose() with { RouteLength = Mm(690) }, "the route takes 690 mm (27.17 in)")!;
        Assert.Equal(BenchSeverity.Wrong, finding.Severity);
        Assert.Contains("may become 674.8 mm", finding.What, StringComparison.Ordinal); // 700 − 4 % of 630
        Assert.Contains("at least 716 mm", finding.Why, StringComparison.Ordinal); // (690 − 70)/0.96 + 70 = 715.8
        Assert.Equal(BenchSeverity.Pass,
            Found(Hose(726) with { RouteLength = Mm(690) }, "spans its route of 690 mm (27.17 in) even")!.Severity);
    }

    [Fact]
    public void A_hose_that_spans_only_if_made_to_length_is_a_caution()
    {
        BenchFinding finding = Found(Hose(720) with { RouteLength = Mm(690) }, "only if it is made to length")!;
        Assert.Equal(BenchSeverity.Caution, finding.Severity);
        Assert.Contains("694 mm (27.32 in), and 6.4 mm (0.25 in) less", finding.What,
            StringComparison.Ordinal); // 720 − 4 % of 650; 28.3 in long: 1/4 in
    }

    [Property]
    public void A_longer_assembly_never_has_a_smaller_tolerance(ushort shorter, ushort longer) =>
        Assert.True(Hose(100 + (Math.Min(shorter, longer) / 10.0)).LengthTolerance.Meters <= Hose(100
            + (Math.Max(shorter, longer) / 10.0)).LengthTolerance.Meters + 1e-12);

    [Fact]
    public void Two_bent_ends_need_their_angle()
    {
        HoseAssembly bent = Hose() with
        {
            First = Hose().First with { Bend = Angle.FromDegrees(90) },
            Second = Hose().Second with { Bend = Angle.FromDegrees(45) }
        };
        Assert.Equal(BenchSeverity.Wrong, Found(bent, "no angle between them")!.Severity);
        Assert.Null(Found(bent with { Orientation = Angle.FromDegrees(180) }, "angle between"));
        Assert.Equal(BenchSeverity.Caution, Found(Hose() with { Orientation = Angle.FromDegrees(180) }, "not two bent ends")!.Severity);
    }

    [Theory]
    [InlineData(129, true)]
    [InlineData(130, false)]
    public void A_bend_below_the_hoses_least_radius_is_wrong(double radius, bool wrong)
    {
        HoseAssembly hose = Hose() with
        {
            Routing = new HoseRouting
            {
                StraightAtFirst = Mm(50),
                StraightAtSecond = Mm(50),
                Bends = [new HoseBend { Radius = Mm(radius), Turn = Angle.FromDegrees(90) }]
            },
        };
        Assert.Equal(wrong, Found(hose, "the least for EN 853 1SN -6 is 130 mm") is not null);
    }

    [Fact]
    public void A_route_longer_than_the_free_hose_is_wrong()
    {
        var bend = new HoseBend { Radius = Mm(200), Turn = Angle.FromDegrees(180) };
        Assert.Equal(200 * Math.PI, bend.Arc.Millimeters, 1e-9);
        HoseAssembly hose = Hose() with
        {
            Routing = new HoseRouting
            {
                StraightAtFirst = Mm(20),
                StraightAtSecond = Mm(20),
                Bends = [bend]
            }
        };
        Assert.Contains("take 668.3 mm", Found(hose, "630 mm (24.8 in) of free hose")!.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bend_that_starts_in_the_fitting_is_a_caution()
    {
        HoseAssembly hose = Hose() with
        {
            OutsideDiameter = Mm(17.4),
            Routing = new HoseRouting
            {
                StraightAtFirst = Mm(10),
                StraightAtSecond = Mm(20),
                Bends = [new HoseBend { Radius = Mm(150), Turn = Angle.FromDegrees(90) }]
            },
        };
        Assert.Equal(BenchSeverity.Caution, Found(hose, "10 mm (0.39 in) of straight hose at its first fitting")!.Severity);
        Assert.Null(Found(hose, "second fitting"));
    }

    [Theory]
    [InlineData(181, BenchSeverity.Wrong)]
    [InlineData(150, BenchSeverity.Caution)]
    [InlineData(144, BenchSeverity.Pass)]
    public void Pressure_is_judged_with_its_margin(double bars, BenchSeverity severity) =>
        Assert.Equal(severity, Found(Hose(), "good for 180 bar", Duty with { Highest = Pressure.FromBars(bars) })!.Severity);

    [Fact]
    public void A_return_hose_in_a_pressure_line_is_wrong_and_so_is_one_too_hot()
    {
        HoseAssembly weak = Hose() with { Rating = HoseRating.Find("SAE J2076")! };
        Assert.Equal(BenchSeverity.Wrong, Found(weak, "is a return hose")!.Severity);
        Assert.Equal(BenchSeverity.Wrong,
            Found(Hose(), "good to 100 °C (212 °F), the fluid reaches 120 °C (248 °F)",
            Duty with { Hottest = Temperature.FromDegreesCelsius(120) })!.Severity);
    }

    [Fact]
    public void Too_little_room_is_told_by_its_kind()
    {
        HoseAssembly hose = Hose() with
        {
            Clearances =
            [
                new HoseClearance { From = "exhaust", Kind = ClearanceKind.Heat, Distance = Mm(60) },
                new HoseClearance { From = "tyre", Kind = ClearanceKind.Moving, Distance = Mm(10) },
                new HoseClearance { From = "bracket", Kind = ClearanceKind.Edge, Distance = Mm(10) },
                new HoseClearance { From = "shielded exhaust", Kind = ClearanceKind.Heat, Distance = Mm(60), Wanted = Mm(50) },
            ],
        };
        Assert.Equal(BenchSeverity.Caution, Found(hose, "60 mm (2.36 in) from exhaust, 100 mm (3.94 in) is wanted")!.Severity);
        Assert.Equal(BenchSeverity.Wrong, Found(hose, "10 mm (0.39 in) from tyre, 25 mm (0.98 in) is wanted")!.Severity);
        Assert.Null(Found(hose, "bracket"));
        Assert.Null(Found(hose, "shielded"));
    }

    [Fact]
    public void Hose_to_buy_counts_pieces_spares_and_every_cut()
    {
        HosePurchaseLine line = new HosePurchase { Kerf = Mm(3), SoldBy = Mm(100) }
            .For([Hose() with { Pieces = 2 }, Hose(500) with { Spares = 1 }]).Single();
        Assert.Equal((3, 1), (line.Pieces, line.Spares));
        Assert.Equal((2 * 630) + 430, line.Net.Millimeters, 1e-9);
        Assert.Equal(430, line.Spare.Millimeters, 1e-9);
        Assert.Equal(5 * 3, line.Kerf.Millimeters, 1e-9);
        Assert.Equal(2200, line.ToBuy.Millimeters, 1e-6); // 2135 mm
    }

    [Fact]
    public void A_sum_that_lies_on_a_step_is_not_rounded_up()
    {
        HosePurchaseLine line = new HosePurchase { Kerf = Length.Zero, SoldBy = Mm(90) }.For([Hose()]).Single();
        Assert.Equal(630, line.ToBuy.Millimeters, 1e-6);
    }

    [Property]
    public void What_is_bought_covers_what_is_cut_and_at_most_one_step_more(byte pieces, byte spares, byte kerf, ushort overall)
    {
        HoseAssembly hose = Hose(100 + (overall / 20.0)) with { Pieces = 1 + (pieces % 20), Spares = spares % 5 };
        var buying = new HosePurchase { Kerf = Mm(kerf / 26.0), SoldBy = Mm(300) };
        HosePurchaseLine line = buying.For([hose]).Single();
        double needed = (line.Net + line.Spare + line.Kerf).Millimeters;
        Assert.InRange(line.ToBuy.Millimeters, needed - 1e-6, needed + 300 + 1e-6);
    }

    [Fact]
    public void Classes_and_sizes_are_bought_apart()
    {
        IEnumerable<HosePurchaseLine> lines = new HosePurchase()
            .For([Hose(), Hose() with { Rating = HoseRating.Find("EN 853 1SN", "-8")! }]);
        Assert.Equal(["EN 853 1SN -6", "EN 853 1SN -8"], lines.Select(line => line.Rating.Name));
    }

    [Theory]
    [InlineData("inverted 3/16", "3/8-24 UNF")]
    [InlineData("37 degrees -6", "9/16-18 UNF")]
    [InlineData("45° -6", "5/8-18 UNF")]
    [InlineData("bubble", "M10 x 1.0")]
    [InlineData("iso 4038", "M10 x 1.0")]
    public void Threads_are_found_by_words(string words, string thread) =>
        Assert.Equal(thread, Assert.Single(ThreadFact.Search(words)).Thread);

    [Fact]
    public void A_search_for_nothing_known_finds_nothing() => Assert.Empty(ThreadFact.Search("bayonet"));

    [Fact]
    public void Same_thread_on_another_cone_is_a_look_alike_and_says_that_it_leaks()
    {
        ThreadFact flare = ThreadFact.All.Single(row => row is { Family: "37° flare", Size: "-4" });
        Assert.Contains(flare.LookAlikes(), alike =>
            alike is { SameThread: true, Other.Family: "45° flare" } && alike.Difference.Contains("leaks", StringComparison.Ordinal));
        Assert.Contains(flare.LookAlikes(), alike =>
            !alike.SameThread && alike.Other.Thread.StartsWith("7/16-24", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_row_of_both_tables_names_its_source()
    {
        Assert.All(HoseRating.All, row => Assert.NotEmpty(row.Source));
        Assert.All(ThreadFact.All, row => Assert.Contains(row.Source, new[] { "L", "N", "S", "M" }));
    }
}
