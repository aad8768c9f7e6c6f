using BrakeBalance.Bench;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Hose and thread tables against figures that sources print; each case names its source and how it was seen.</summary>
[Source("SAE and EN hose and thread standards as restated by the trade", Reading.SecondHand)]
public sealed class HoseAndThreadFigures
{
    private static Length In(double inches) => Length.FromInches(inches);

    private static HoseAssembly Hose(double overallInches, double first, double second) => new("hose", HoseRating.Find("EN 853 1SN", "-6")!,
        new HoseEnd { Fitting = "first", CutOff = In(first) },
        new HoseEnd { Fitting = "second", CutOff = In(second) })
    {
        OverallLength = In(overallInches),
    };

    /// <summary>
    /// Cut length = overall length − cut-off of each end, as a maker's note and trade pages give it; numbers recomputed: 24.00 in with
    /// 1.10 and 1.35 in gives 21.55 in.
    /// </summary>
    [Source("A maker's note on cut lengths", Reading.Read)]
    [Fact]
    public void Cut_length_of_a_two_foot_hose() => Assert.Equal(21.55, Hose(24.00, 1.10, 1.35).CutLength.Inches, 0.005);

    /// <summary>Assemblies of up to 12 in may be 0.125 in off: a maker's note, read in part.</summary>
    [Source("A maker's note on cut lengths", Reading.Read)]
    [Theory]
    [InlineData(6)]
    [InlineData(12)]
    public void Length_tolerance_of_a_short_assembly(double inches) =>
        Assert.Equal(0.125, Hose(inches, 1, 1).LengthTolerance.Inches, 0.0005);

    /// <summary>A hose may grow by 2 % or shorten by 4 % under pressure: a hose maker's page, read in part.</summary>
    [Source("A hose maker's page", Reading.Read)]
    [Fact]
    public void Length_under_pressure()
    {
        HoseAssembly hose = Hose(100, 0, 0);
        Assert.Equal(102, hose.LongestUnderPressure.Inches, 1e-9);
        Assert.Equal(96, hose.ShortestUnderPressure.Inches, 1e-9);
    }

    /// <summary>
    /// SAE 100R1 from 3/16 to 2 in, as restated on a hose supplier's page: working 575 to 3,250 psi, proof 1,150 to 6,500, burst 2,300
    /// to 13,000,
    /// bend 3.5 to 25 in.
    /// </summary>
    [Theory]
    [InlineData("-3", 3250, 6500, 13000, 3.5)]
    [InlineData("-32", 575, 1150, 2300, 25)]
    public void Range_of_SAE_100R1(string dash, double working, double proof, double burst, double bend)
    {
        HoseRating rating = HoseRating.Find("SAE 100R1 (older edition)", dash)!;
        double psi = rating.WorkingPressure.PoundsForcePerSquareInch;
        Assert.Equal(working, psi, 0.5);
        Assert.Equal(proof, psi * rating.ProofFactor!.Value, 1.0);
        Assert.Equal(burst, psi * rating.BurstFactor!.Value, 2.0);
        Assert.Equal(bend, rating.LeastBendRadius!.Value.Inches, 0.05);
    }

    /// <summary>
    /// A 5/8 in two-wire hose to EN 853 2SN carries 250 bar on its printed marking (25.0 MPa, seen in an article on hydraulics).
    /// </summary>
    [Fact]
    public void Printed_marking_of_a_two_wire_hose()
    {
        HoseRating rating = HoseRating.Find("EN 853 2SN", "-10")!;
        Assert.Equal(25.0, rating.WorkingPressure.Megapascals, 0.05);
        Assert.Equal(16, rating.Bore!.Value.Millimeters, 0.5);
    }

    /// <summary>
    /// EN 853 2SN from memory, written down before the table was found: 400, 330, 275, 250, 215 and 165 bar for 1/4, 3/8, 1/2, 5/8, 3/4
    /// and 1 in, bend
    /// radii 4, 5, 7, 8, 9.5 and 12 in.
    /// </summary>
    [Source("EN 853 2SN", Reading.FromMemory)]
    [Theory]
    [InlineData("-4", 400, 4)]
    [InlineData("-6", 330, 5)]
    [InlineData("-8", 275, 7)]
    [InlineData("-10", 250, 8)]
    [InlineData("-12", 215, 9.5)]
    [InlineData("-16", 165, 12)]
    public void Two_wire_hose_from_memory(string dash, double bars, double bendInches)
    {
        HoseRating rating = HoseRating.Find("EN 853 2SN", dash)!;
        Assert.Equal(bars, rating.WorkingPressure.Bars, 0.5);

        // The metric table rounds the inch radii to 5 or 10 mm.
        Assert.Equal(bendInches * 25.4, rating.LeastBendRadius!.Value.Millimeters, 5.0);
    }

    /// <summary>
    /// Steering hose: SAE J190 and J2050 10.3 MPa (1,500 psi), to 121 and 149 °C; SAE J189 1.72 MPa (250 psi) with fittings and 0.69 MPa
    /// (100 psi)
    /// clamped; SAE J2076 1.21 MPa (175 psi): summaries of those standards in public documents.
    /// </summary>
    [Theory]
    [InlineData("SAE J190", 10.3, 1500)]
    [InlineData("SAE J2050", 10.3, 1500)]
    [InlineData("SAE J189 with crimped fittings", 1.72, 250)]
    [InlineData("SAE J189 with clamps", 0.69, 100)]
    [InlineData("SAE J2076", 1.21, 175)]
    public void Steering_hose(string name, double megapascals, double psi)
    {
        HoseRating rating = HoseRating.Find(name)!;
        Assert.Equal(megapascals, rating.WorkingPressure.Megapascals, 0.05 * Math.Pow(10, megapascals < 5 ? -1 : 0));
        Assert.Equal(psi, rating.WorkingPressure.PoundsForcePerSquareInch, 0.5);
    }

    /// <summary>SAE J188 10.3 MPa (1,500 psi), from memory.</summary>
    [Source("SAE J188", Reading.FromMemory)]
    [Fact]
    public void High_expansion_steering_hose() => Steering_hose("SAE J188", 10.3, 1500);

    /// <summary>The working pressure of an assembly is the lower of hose and connector: SAE J517 (Jul 2003), scope, read in part.</summary>
    [Source("SAE J517 (Jul 2003), scope", Reading.Read)]
    [Fact]
    public void The_weaker_of_hose_and_connector_counts()
    {
        HoseAssembly hose = Hose(24, 1, 1);
        Assert.Equal(180, hose.WorkingPressure.Bars, 1e-9);
        Assert.Equal(120, (hose with { Second = hose.Second with { WorkingPressure = Pressure.FromBars(120) } }).WorkingPressure.Bars,
            1e-9);
        Assert.Equal(180, (hose with { Second = hose.Second with { WorkingPressure = Pressure.FromBars(300) } }).WorkingPressure.Bars,
            1e-9);
    }

    /// <summary>
    /// 37 and 45 degree flares share their threads in -2, -3, -4, -5, -8 and -10, not in -12, where they have 12 and 14 threads: two
    /// trade texts.
    /// </summary>
    [Fact]
    public void Flares_of_two_cones_share_threads()
    {
        string Thread(string family, string size) => ThreadFact.All.Single(row => row.Family == family && row.Size == size).Thread;
        Assert.All(new[] { "-2", "-3", "-4", "-5", "-8", "-10" }, size =>
            Assert.Equal(Thread("37° flare", size), Thread("45° flare", size)));
        Assert.Equal(12, ThreadFact.All.Single(row => row is { Family: "37° flare", Size: "-12" }).ThreadsPerInch, 0.05);
        Assert.Equal(14, ThreadFact.All.Single(row => row is { Family: "45° flare", Size: "-12" }).ThreadsPerInch, 0.05);
    }

    /// <summary>
    /// A fittings seller's pages: 3/16 in tube takes 3/8-24, 1/4 in tube 7/16-24 inverted-flare nuts; an M10 × 1.0 nut (25.4 threads an
    /// inch) starts in a
    /// 3/8-24 port and strips it.
    /// </summary>
    [Fact]
    public void Brake_nuts_and_the_one_that_strips()
    {
        ThreadFact small = ThreadFact.All.Single(row => row is { Family: "inverted double flare", Size: "3/16 in tube" });
        Assert.StartsWith("3/8-24", small.Thread, StringComparison.Ordinal);
        Assert.StartsWith("7/16-24", ThreadFact.All.Single(row => row is { Family: "inverted double flare", Size: "1/4 in tube" }).Thread,
            StringComparison.Ordinal);
        ThreadFact metric = ThreadFact.All.First(row => row.Thread == "M10 x 1.0" && row.Tube is not null);
        Assert.Equal(25.4, metric.ThreadsPerInch, 0.05);
        Assert.Contains(small.LookAlikes(), alike => alike.Other.Thread == "M10 x 1.0" && !alike.SameThread);
    }

    /// <summary>Threads as their names say: diameter and threads an inch are those written in the thread's name.</summary>
    [Source("SAE J512 and J514, names of threads", Reading.FromMemory)]
    [Fact]
    public void Numbers_of_a_thread_are_those_of_its_name()
    {
        foreach (ThreadFact row in ThreadFact.All.Where(row => !row.Thread.StartsWith('M')))
        {
            string[] name = row.Thread.Split(' ')[..^1] is [var whole, var rest]
                ? [whole, .. rest.Split('-')] : ["0", .. row.Thread.Split(' ')[0].Split('-')];
            string[] fraction = name[1].Split('/');
            double inches = double.Parse(name[0], System.Globalization.CultureInfo.InvariantCulture)
                + (double.Parse(fraction[0], System.Globalization.CultureInfo.InvariantCulture) / double.Parse(fraction[1],
                    System.Globalization.CultureInfo.InvariantCulture));
            Assert.Equal(inches, row.MajorDiameter.Inches, 1e-4);
            Assert.Equal(double.Parse(name[2], System.Globalization.CultureInfo.InvariantCulture), row.ThreadsPerInch, 0.001);
        }
    }
}
