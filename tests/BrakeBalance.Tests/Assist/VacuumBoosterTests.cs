using BrakeBalance.Assist;
using UnitsNet;

namespace BrakeBalance.Tests.Assist;

public sealed class VacuumBoosterTests
{
    private static readonly VacuumBooster Booster = new()
    {
        Supply = VacuumSupply.StockCamshaft,
        DiaphragmDiameter = Length.FromInches(9),
        BoostRatio = 4,
        CutInForce = Force.FromNewtons(40),
        JumpIn = Force.FromNewtons(200),
        ReturnSpringForce = Force.FromNewtons(90),
        VacuumChamberVolume = Volume.FromLiters(2.4),
        ApplyChamberVolume = Volume.FromLiters(0.5),
    };

    [Fact]
    public void Nothing_comes_out_before_the_valve_opens_and_the_jump_in_right_after()
    {
        Assert.Equal(0, Booster.OutputForce(Force.FromNewtons(39)).Newtons);
        Assert.Equal(200, Booster.OutputForce(Force.FromNewtons(40)).Newtons, 9);
    }

    [Fact]
    public void Above_run_out_the_output_rises_one_to_one()
    {
        RunOut knee = Booster.RunOut!.Value;
        Assert.Equal(knee.OutputForce.Newtons, Booster.OutputForce(knee.InputForce).Newtons, 6);
        Assert.Equal(100, (Booster.OutputForce(knee.InputForce + Force.FromNewtons(100)) - knee.OutputForce).Newtons, 6);
        Assert.Equal(400, (knee.OutputForce - Booster.OutputForce(knee.InputForce - Force.FromNewtons(100))).Newtons, 6);
    }

    [Fact]
    public void A_long_duration_camshaft_brings_the_run_out_earlier()
    {
        VacuumBooster weak = Booster with { Supply = VacuumSupply.LongDurationCamshaft };
        Assert.True(weak.RunOut!.Value.InputForce < Booster.RunOut!.Value.InputForce);
    }

    [Fact]
    public void A_second_diaphragm_with_the_same_share_doubles_the_assist() =>
        Assert.Equal(2 * Booster.MaximumAssist.Newtons, (Booster with { Diaphragms = 2, EffectiveAreaShare = 0.85 }).MaximumAssist.Newtons,
            6);

    [Fact]
    public void Without_vacuum_the_driver_pushes_the_spring_as_well()
    {
        BrakeAssist dead = Booster.WithoutEnergy();
        Assert.Equal(410, dead.OutputForce(Force.FromNewtons(500)).Newtons, 9);
        VacuumBooster none = Booster with { Supply = new VacuumSupply { Vacuum = Pressure.Zero } };
        Assert.Null(none.RunOut);
        Assert.Equal(410, none.OutputForce(Force.FromNewtons(500)).Newtons, 9);
    }

    [Fact]
    public void Taking_the_car_uphill_costs_as_much_vacuum_as_the_air_gets_thinner()
    {
        VacuumSupply high = VacuumSupply.StockCamshaft.MovedTo(Length.FromMeters(1500));
        double lost = VacuumSupply.StockCamshaft.Vacuum.Pascals - high.Vacuum.Pascals;
        Assert.Equal(VacuumSupply.StockCamshaft.AirPressure.Pascals - high.AirPressure.Pascals, lost, 6);
        Assert.Equal(VacuumSupply.StockCamshaft.ChamberPressure.Pascals, high.ChamberPressure.Pascals, 6);
    }

    [Fact]
    public void Each_reserve_application_is_weaker_than_the_one_before()
    {
        var reserve = Booster.Reserve(Length.FromMillimeters(12), 6);
        Assert.Equal(6, reserve.Length);
        Assert.Equal(1, reserve[0].ShareOfFirst, 12);
        Assert.True(reserve[0].MaximumAssist < Booster.MaximumAssist);
        for (int i = 1; i < reserve.Length; i++)
        {
            // Once the swept air has filled the vacuum side up, nothing is left that could weaken further.
            Assert.True(reserve[i].MaximumAssist < reserve[i - 1].MaximumAssist || reserve[i - 1].MaximumAssist <= Force.Zero);
        }

        Assert.Equal(0, reserve[^1].MaximumAssist.Newtons);
    }

    [Fact]
    public void A_tandem_works_with_a_smaller_part_of_each_circle_than_a_single()
    {
        Assert.Equal(0.85, Booster.EffectiveAreaShare);
        Assert.InRange((Booster with { Diaphragms = 2 }).EffectiveAreaShare, 0.75, 0.80);
        Assert.Equal(0.9, (Booster with { Diaphragms = 2, EffectiveAreaShare = 0.9 }).EffectiveAreaShare);

        // Common practice: an 8 in tandem works with 75 to 80 in2.
        Assert.InRange((Booster with { Diaphragms = 2, DiaphragmDiameter = Length.FromInches(8) }).EffectiveArea.SquareInches, 75, 80);
    }

    [Fact]
    public void A_longer_last_stroke_leaves_less_help_at_its_end()
    {
        Length usual = Length.FromMillimeters(5);
        double shorter = Booster.Reserve([usual, usual])[1].WorkingPressure.Pascals;
        Assert.True(Booster.Reserve([usual, Length.FromMillimeters(8)])[1].WorkingPressure.Pascals < shorter);
        Assert.Equal(shorter, Booster.Reserve(usual, 2)[1].WorkingPressure.Pascals);
    }

    [Fact]
    public void Without_chamber_volumes_no_reserve_is_claimed() =>
        Assert.Empty((Booster with { VacuumChamberVolume = Volume.Zero }).Reserve(Length.FromMillimeters(10), 3));

    [Fact]
    public void A_travel_that_sweeps_more_than_the_chamber_is_refused_in_words()
    {
        ArgumentOutOfRangeException fault =
            Assert.Throws<ArgumentOutOfRangeException>(() => Booster.Reserve(Length.FromMillimeters(100), 1));
        Assert.Contains("vacuum chamber", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_diaphragms_are_refused()
    {
        ArgumentOutOfRangeException fault = Assert.Throws<ArgumentOutOfRangeException>(() => Booster with { Diaphragms = 3 });
        Assert.Contains("1 (single) or 2 (tandem)", fault.Message, StringComparison.Ordinal);
    }
}
