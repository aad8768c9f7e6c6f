using BrakeBalance.Measurements;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Pressures that service manuals give for proportioning and load-sensing valves, put through the gauge fit.</summary>
/// <remarks>
/// Service data read, without makes: kind of vehicle and year stand beside each case; knee and slope are worked out by hand from the
/// middles of the bands.
/// Each point is fed four times, as a mechanic repeats it, with one pair below the knee, where both lines carry the same pressure.
/// </remarks>
[Source("Service manuals, proportioning and load-sensing valves: line pressures to be read in front and rear", Reading.Read)]
public class ValveServiceTables
{
    /// <summary>Front pressure, lowest and highest rear pressure, in MPa.</summary>
    private static readonly Dictionary<string, (double Knee, double Slope, (double Front, double Low, double High)[] Points)> Tables = new()
    {
        // 30 + 0.3 (45 - 30) = 34.5 and 30 + 0.3 (100 - 30) = 51 bar: the marking is slope and knee in bar.
        ["valve marked 0.3/30, compact saloon, 2004"] = (3.0, 0.3, [(0.5, 0.5, 0.5), (4.5, 3.25, 3.65), (10.0, 4.80, 5.40)]),
        // 3.95 to 5.4 over 9.8 - 3.95 MPa.
        ["fixed valve, coupe of 2.4 litres, 2004"] = (3.95, 0.248, [(1.5, 1.5, 1.5), (3.95, 3.7, 4.2), (9.8, 5.0, 5.8)]),
        ["fixed valve, coupe of 3.0 litres, 2004"] = (3.45, 0.244, [(1.5, 1.5, 1.5), (3.45, 3.2, 3.7), (9.8, 4.6, 5.4)]),
        ["fixed valve, coupe and saloon with anti-lock brakes, 1997 and 1998"] =
            (2.945, 0.312, [(1.5, 1.5, 1.5), (2.945, 2.70, 3.19), (6.86, 3.92, 4.41)]),
        // The line through (4.9, 2.55) and (9.8, 3.53) meets equal pressures at (2.55 - 0.2 x 4.9) / 0.8.
        ["load-sensing valve, pick-up, driver only, 2006"] = (1.96, 0.200, [(1.0, 1.0, 1.0), (4.9, 2.25, 2.85), (9.8, 3.13, 3.93)]),
        ["load-sensing valve, pick-up 4x2 with anti-lock brakes, 2006"] =
            (1.95, 0.461, [(1.0, 1.0, 1.0), (4.9, 2.91, 3.71), (9.8, 4.97, 6.17)]),
        ["load-sensing valve, off-road car, short wheelbase, laden"] = (7.27, 0.290, [(4.0, 4.0, 4.0), (9.8, 7.5, 8.5), (16.7, 9.0, 11.0)]),
    };

    public static TheoryData<string> Names => [.. Tables.Keys];

    private static GaugePair Pair(double front, double rear, double? turns = null) =>
        new()
        {
            Front = Pressure.FromMegapascals(front),
            Rear = Pressure.FromMegapascals(rear),
            Turns = turns,
            Phase = PressurePhase.Apply,
        };

    /// <summary>
    /// A manual that gives the knee and one pressure says nothing in between, where a later knee and a flatter slope would pass too: a
    /// pair half way is added.
    /// </summary>
    private static ValveFit Fit((double Front, double Rear)[] read) => FitAll(
        read[1].Front > read[1].Rear || read.Length != 3
            ? read : [.. read, ((read[1].Front + read[2].Front) / 2, (read[1].Rear + read[2].Rear) / 2)]);

    private static ValveFit FitAll(IEnumerable<(double Front, double Rear)> points) =>
        ValveFitting.Analyse(points.SelectMany(p => Enumerable.Repeat(Pair(p.Front, p.Rear), 4))).Positions.Single().Apply!;

    [Theory]
    [MemberData(nameof(Names))]
    public void The_middle_of_the_band_gives_its_knee_and_slope(string name)
    {
        (double knee, double slope, (double Front, double Low, double High)[] points) = Tables[name];
        ValveFit fit = Fit([.. points.Select(p => (p.Front, (p.Low + p.High) / 2))]);
        Assert.InRange(fit.Slope!.Value.Estimate, slope - 0.003, slope + 0.003);
        Assert.InRange(fit.Knee!.Value.Estimate.Megapascals, knee - 0.03, knee + 0.03);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_valve_anywhere_in_the_band_is_fitted_within_it(string name)
    {
        (double Front, double Low, double High)[] points = Tables[name].Points;
        foreach ((double a, double b) in (ReadOnlySpan<(double, double)>)[(0, 0), (0, 1), (1, 0), (1, 1)])
        {
            (double Front, double Rear)[] read =
                [.. points.Select((p, i) => (p.Front, p.Low + (p.High - p.Low) * (i == points.Length - 1 ? b : a)))];
            if (read[1].Rear > read[1].Front)
            {
                // The knee itself lies anywhere in its band, on the line of equal pressures.
                read[1] = (read[1].Rear, read[1].Rear);
            }

            ValveFit fit = Fit(read);
            foreach ((double front, double low, double high) in points.Skip(points[1].High > points[1].Front ? 2 : 1))
            {
                Assert.InRange(fit.RearAt(Pressure.FromMegapascals(front)).Megapascals, low - 0.05, high + 0.05);
            }
        }
    }

    /// <summary>
    /// Combination valve of a saloon with front discs and rear drums, 2002: knee 400 psi, slope 0.34, 1000 psi in give 525 to 625 psi
    /// (service data read); 400 + 0.34 x 600 = 604.
    /// </summary>
    [Fact]
    public void Slope_0_34_from_400_psi_gives_604_psi_at_1000()
    {
        IEnumerable<GaugePair> pairs = new double[] { 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000 }.Select(p => new GaugePair
        {
            Front = Pressure.FromPoundsForcePerSquareInch(p),
            // A dial is read to 5 psi.
            Rear = Pressure.FromPoundsForcePerSquareInch(5 * Math.Round((p <= 400 ? p : 400 + 0.34 * (p - 400)) / 5)),
        });
        ValveFit fit = ValveFitting.Analyse(pairs).Positions.Single().Apply!;
        Assert.InRange(400, fit.Knee!.Value.Low.PoundsForcePerSquareInch, fit.Knee.Value.High.PoundsForcePerSquareInch);
        Assert.InRange(0.34, fit.Slope!.Value.Low, fit.Slope.Value.High);
        Assert.InRange(fit.RearAt(Pressure.FromPoundsForcePerSquareInch(1000)).PoundsForcePerSquareInch, 600, 608);
    }

    /// <summary>
    /// Combination valve of an off-road car, 1992: front held off up to 117 psi, knee 300 psi, slope 0.27 (service data read).
    /// </summary>
    [Fact]
    public void A_front_held_off_by_117_psi_is_said_and_the_knee_of_300_psi_is_found_once_it_is_open()
    {
        static GaugePair Psi(double front, double rear) => new()
        {
            Front = Pressure.FromPoundsForcePerSquareInch(front),
            Rear = Pressure.FromPoundsForcePerSquareInch(rear),
            Phase = PressurePhase.Apply,
        };
        static double Rear(double master) => master <= 300 ? master : 300 + 0.27 * (master - 300);
        double[] master = [130, 160, 190, 220, 250, 280, 350, 450, 550, 650, 750, 850];
        ValveFit open = ValveFitting.Analyse(master.Select(p => Psi(p, Rear(p)))).Positions.Single().Apply!;
        Assert.Equal(300, open.Knee!.Value.Estimate.PoundsForcePerSquareInch, 2.0);
        Assert.Equal(0.27, open.Slope!.Value.Estimate, 0.005);
        GaugeAnalysis held = ValveFitting.Analyse(master.Select(p => Psi(p - 117, Rear(p))));
        GaugeFinding offset = Assert.Single(held.Findings, f => f.Kind == GaugeFindingKind.Offset);
        Assert.Contains("metering", offset.Text);
        Assert.Contains("8.1 bar", offset.Text);
    }

    /// <summary>
    /// Load-sensing valve of a pick-up: 3.70 ± 0.64 MPa at the rear with 10.0 in front; a turn of its nut moves that by 220 kPa, a
    /// millimetre of its length by 70 kPa (service data read).
    /// </summary>
    [Theory]
    [InlineData(0.220)]
    [InlineData(0.070)]
    public void Turns_of_the_nut_move_the_rear_pressure_as_the_manual_says(double perTurn)
    {
        // The manual gives no slope; the rear pressure at 10 MPa must move alike whatever it is.
        foreach (double slope in (ReadOnlySpan<double>)[0.2, 0.3])
        {
            List<GaugePair> pairs = [];
            foreach (double turns in (ReadOnlySpan<double>)[-2, 0, 2])
            {
                double knee = (3.70 + perTurn * turns - slope * 10) / (1 - slope);
                pairs.AddRange(new double[] { 0.5, 1, 4, 6, 8, 10 }.Select(p => Pair(p, p <= knee ? p : knee + slope * (p - knee), turns)));
            }

            GaugeAnalysis analysis = ValveFitting.Analyse(pairs);
            Assert.Equal(perTurn, (1 - analysis.Slope!.Value.Estimate) * analysis.Calibration!.KneePerTurn.Estimate.Megapascals, 0.003);
            foreach (AdjusterPosition position in analysis.Positions)
            {
                Assert.Equal(3.70 + perTurn * position.Turns!.Value, position.Apply!.RearAt(Pressure.FromMegapascals(10)).Megapascals,
                    0.01);
                Assert.InRange(position.Apply.RearAt(Pressure.FromMegapascals(10)).Megapascals, 3.70 - 0.64, 3.70 + 0.64);
            }
        }
    }

    /// <summary>
    /// Load-sensing valve of an off-road car, short wheelbase (service data read): spring 133 mm unladen, 9.8 MPa give 4.9 to 5.9; 149
    /// mm laden, slope 0.290. One pressure suffices unladen because the slope is shared.
    /// </summary>
    [Fact]
    public void A_single_pressure_unladen_gives_the_knee_by_the_slope_read_laden()
    {
        GaugePair[] pairs =
        [
            Pair(2, 2, 133), Pair(3, 3, 133), Pair(9.8, 5.4, 133), Pair(9.8, 5.4, 133),
            Pair(3, 3, 149), Pair(4, 4, 149), Pair(9.8, 8.0, 149), Pair(9.8, 8.0, 149), Pair(16.7, 10.0, 149), Pair(16.7, 10.0, 149),
        ];
        GaugeAnalysis analysis = ValveFitting.Analyse(pairs);
        // (5.4 - 0.290 x 9.8) / 0.710 = 3.60 MPa; laden 7.27 MPa.
        Assert.Equal(3.60, analysis.Positions[0].Apply!.Knee!.Value.Estimate.Megapascals, 0.03);
        Assert.Equal(7.27, analysis.Positions[1].Apply!.Knee!.Value.Estimate.Megapascals, 0.03);
        Assert.Equal((7.27 - 3.60) / 16, analysis.Calibration!.KneePerTurn.Estimate.Megapascals, 0.004);
    }
}
