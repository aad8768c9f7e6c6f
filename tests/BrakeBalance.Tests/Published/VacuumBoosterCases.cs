using BrakeBalance.Assist;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Vacuum booster of a test car: UCB-ITS-PRR-97-21 (California PATH research report, 1997), table 2.1, seen second-hand in a note that cites
/// escholarship.org/uc/item/02b8f7q2. The reserve sequences are that note's own calculation, not a measurement.
/// </summary>
[Source("UCB-ITS-PRR-97-21, table 2.1, in a note", Reading.SecondHand)]
public sealed class VacuumBoosterCases
{
    private static readonly VacuumBooster TestCar = new()
    {
        // 5.33e-2 m2 of diaphragm, taken as all effective; idle at 33 kPa absolute.
        DiaphragmDiameter = Length.FromMeters(Math.Sqrt(0.0533 * 4 / Math.PI)),
        EffectiveAreaShare = 1,
        Supply = new VacuumSupply { Vacuum = Pressure.FromKilopascals(101.325 - 33) },
        BoostRatio = 5,
        CutInForce = Force.FromNewtons(50),
        ReturnSpringForce = Force.FromNewtons(97),
        VacuumChamberVolume = Volume.FromLiters(2.4),
        ApplyChamberVolume = Volume.FromLiters(0.43),
    };

    [Fact]
    public void Table_2_1_diaphragm_area_is_that_of_260_mm() => Assert.Equal(260, TestCar.DiaphragmDiameter.Millimeters, 0.6);

    [Fact]
    public void Greatest_assist_is_3_64_kN() => Assert.Equal(3.64, TestCar.MaximumAssist.Kilonewtons, 0.005);

    [Theory]
    [InlineData(10, new[] { 33.0, 56.2, 71.6, 81.7, 88.4 })]
    [InlineData(5, new[] { 33.0, 49.8, 62.5, 72.0, 79.2 })]
    [InlineData(15, new[] { 33.0, 62.7, 79.5, 88.9, 94.3 })]
    public void Trapped_charge_rises_as_printed(double travelMillimetres, double[] kilopascals)
    {
        var reserve = TestCar.Reserve(Length.FromMillimeters(travelMillimetres), kilopascals.Length);
        for (int i = 0; i < kilopascals.Length; i++)
        {
            // The note takes the air at 101.3 kPa, rounded; its last digit differs by that.
            Assert.Equal(kilopascals[i], 101.325 - reserve[i].WorkingPressure.Kilopascals, 0.07);
        }
    }

    [Fact]
    public void Assist_of_each_application_at_10_mm_is_as_printed()
    {
        double[] kilonewtons = [3.64, 2.40, 1.58, 1.05, 0.69];
        var reserve = TestCar.Reserve(Length.FromMillimeters(10), 5);
        for (int i = 0; i < kilonewtons.Length; i++)
        {
            Assert.Equal(kilonewtons[i], reserve[i].MaximumAssist.Kilonewtons, 0.0055);
        }
    }

    [Fact]
    public void At_375_N_the_measured_car_had_not_run_out()
    {
        // The rear chamber then stood at 72 to 74 kPa absolute. The boost ratio that this implies puts the run-out above 375 N.
        double implied = 1 + (((0.0533 * (73e3 - 33e3)) - 97) / (375 - 50));
        Assert.True((TestCar with { BoostRatio = implied }).RunOut!.Value.InputForce.Newtons > 375);
    }

    /// <summary>
    /// Run-out force F = S/(i − 1): derived from the statement that the apply chamber has then reached the air's pressure (US patent 6,033,038,
    /// seen second-hand) and that the output rises one to one above it (a training page on vacuum boosters).
    /// </summary>
    [Fact]
    public void Run_out_lies_where_the_assist_over_ratio_less_one_puts_it()
    {
        VacuumBooster ideal = TestCar with { BoostRatio = 4, CutInForce = Force.Zero, ReturnSpringForce = Force.Zero };
        RunOut knee = ideal.RunOut!.Value;
        Assert.Equal(3641.7 / 3, knee.InputForce.Newtons, 0.1);
        Assert.Equal(4 * 3641.7 / 3, knee.OutputForce.Newtons, 0.4);
        Assert.Equal(50, (ideal.OutputForce(knee.InputForce + Force.FromNewtons(50)) - knee.OutputForce).Newtons, 6);
    }

    /// <summary>Nugraha, Int. J. Technology 12(4), 2021, seen second-hand: a small city car needs 426 N with and 625 N without assist for 3.2 MPa.</summary>
    [Fact]
    public void Small_city_car_needs_1_47_times_the_force_without_assist()
    {
        Force atCylinder = Force.FromNewtons(625);
        var assist = TestCar with { BoostRatio = 625.0 / 426.0, CutInForce = Force.Zero, ReturnSpringForce = Force.Zero };
        Assert.Equal(426, assist.InputForce(atCylinder).Newtons, 0.5);
        Assert.Equal(1.47, assist.WithoutEnergy().InputForce(atCylinder) / assist.InputForce(atCylinder), 0.005);
    }

    /// <summary>
    /// QC/T 307-1999, Technical conditions for vacuum boosters, seen in a text that cites it: tested at 66.7 ± 1.3 kPa, which is 500 mmHg; every
    /// vacuum has its own knee.
    /// </summary>
    [Fact]
    public void Test_vacuum_of_500_mmHg_is_66_7_kPa_and_each_vacuum_has_its_own_knee()
    {
        var test = new VacuumSupply { Vacuum = Pressure.FromMillimetersOfMercury(500) };
        Assert.Equal(66.7, test.Vacuum.Kilopascals, 0.05);
        double[] knees = [.. new[] { 200.0, 300, 400, 500 }.Select(mercury =>
            (TestCar with { Supply = new VacuumSupply { Vacuum = Pressure.FromMillimetersOfMercury(mercury) } }).RunOut!.Value.InputForce.Newtons)];
        Assert.Equal(knees.Order(), knees);
        Assert.Equal(4, knees.Distinct().Count());
    }

    /// <summary>ISO 2533:1975 standard atmosphere: constants read in texts that restate it; the values at these heights recomputed from them.</summary>
    [Theory]
    [InlineData(0, 101_325)]
    [InlineData(1000, 89_874.6)]
    [InlineData(2000, 79_495.2)]
    [InlineData(3000, 70_108.5)]
    public void Air_pressure_follows_the_standard_atmosphere(double metres, double pascals)
    {
        var supply = new VacuumSupply { Vacuum = Pressure.Zero, Altitude = Length.FromMeters(metres) };
        Assert.Equal(pascals, supply.AirPressure.Pascals, 5.0);
    }

    /// <summary>A training page on vacuum supply: about 33 mbar of vacuum are lost per 300 m of altitude (read).</summary>
    [Source("A training page on vacuum supply", Reading.Read)]
    [Fact]
    public void About_33_mbar_are_lost_in_300_m()
    {
        VacuumSupply low = VacuumSupply.StockCamshaft;
        double lost = low.Vacuum.Millibars - low.MovedTo(Length.FromMeters(300)).Vacuum.Millibars;
        Assert.InRange(lost, 31, 37);
    }

    /// <summary>
    /// Recomputed without losses for a 9 in unit with 53 in² of effective area (common practice), 50 lbf at a 4:1 pedal into a 1-1/8 in bore:
    /// about 670 psi at 18 inHg and 460 psi at 10 inHg.
    /// </summary>
    [Source("Common practice", Reading.FromMemory)]
    [Theory]
    [InlineData(18, 670)]
    [InlineData(10, 460)]
    public void A_9_in_unit_past_run_out_gives_the_pressure_of_assist_and_foot(double mercury, double psi)
    {
        var unit = new VacuumBooster
        {
            Supply = new VacuumSupply { Vacuum = Pressure.FromInchesOfMercury(mercury) },
            DiaphragmDiameter = Length.FromInches(9),
            EffectiveAreaShare = 53 / (Math.PI / 4 * 81),
            BoostRatio = 8,
            CutInForce = Force.Zero,
        };
        double output = unit.OutputForce(Force.FromPoundsForce(200)).PoundsForce;
        Assert.Equal(psi, output / (Math.PI / 4 * 1.125 * 1.125), 5.0);
    }
}
