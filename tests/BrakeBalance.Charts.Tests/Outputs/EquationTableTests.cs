using BrakeBalance.Balance;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Charts.Outputs;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Vehicles.Files;
using Microsoft.Data.Analysis;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Outputs;

public class EquationTableTests
{
    [Fact]
    public void Equal_values_differ_by_none_and_others_by_their_share()
    {
        DataFrame table = EquationTable.Of(
            ("N₁", Force.FromKilonewtons(6.27), Force.FromNewtons(6270.0001)), ("η", 0.90, 1.0), ("p₂", null, Pressure.FromBars(2)));
        Assert.Equal(["none", "10 %", "–"], table["Difference"].Cast<string>());
        Assert.Equal(["6270 N", "0.9", "–"], table["By the equation"].Cast<string>());
        Assert.Equal(["6270 N", "1", "2 bar"], table["By the calculation"].Cast<string>());
    }

    [Fact]
    public void A_flow_in_a_pipe_is_no_speed_of_a_car() =>
        Assert.Equal(["2.1 m/s", "36 km/h", "−3 bar"], EquationTable.Of(
            ("v", Speed.FromMetersPerSecond(2.1), null), ("v", Speed.FromMetersPerSecond(10), null), ("p", Pressure.FromBars(-3), null))
            ["By the equation"].Cast<string>());

    [Fact]
    public void A_force_is_not_held_against_a_pressure()
    {
        ArgumentException fault = Assert.Throws<ArgumentException>(() => EquationTable.Of(("T₁", Force.Zero, Pressure.Zero)));
        Assert.Contains("T₁: a Force cannot be held against a Pressure", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("305 mm .. 335 mm", "305 mm .. 335 mm", "12 in .. 13.2 in")]
    [InlineData("2.8 m .. 2.9 m", "2.8 m .. 2.9 m", "110 in .. 114 in")]
    [InlineData("9 in", "229 mm", "9 in")]
    [InlineData("250 psi .. 600 psi", "17.2 bar .. 41.4 bar", "250 psi .. 600 psi")]
    [InlineData("0.35 .. 0.42", "0.35 .. 0.42", "0.35 .. 0.42")]
    [InlineData("7/8 in", "22.2 mm", "7/8 in")]
    public void A_written_range_stays_as_it_is_in_its_own_system_of_units(string written, string metric, string customary) =>
        Assert.Equal((metric, customary), (OtherUnits.Text(written, UnitSystem.Si), OtherUnits.Text(written, UnitSystem.Us)));

    [Fact]
    public void A_lock_up_is_a_small_table_in_shown_units()
    {
        LockUp lockUp = Cars.Model("coupe-1960s").FirstLockUp(0.8)!;
        string text = ValueText.Of(lockUp);
        Assert.True(ValueHtml.Suits(lockUp));
        Assert.Contains("at, master pressure", ValueHtml.Of(lockUp),
            StringComparison.Ordinal);
        Assert.Contains(NumberText.Of(lockUp.At.MasterPressure), text, StringComparison.Ordinal);
        Assert.EndsWith(" bar", NumberText.Of(lockUp.At.MasterPressure), StringComparison.Ordinal);
        Assert.DoesNotContain("Pa\n", text + "\n", StringComparison.Ordinal);
        Assert.InRange(text.Split('\n').Length, 8, 20);
    }

    [Fact]
    public void A_computed_quantity_is_an_answer_like_its_text()
    {
        LessonSheet sheet = LessonSheet.Of("load-transfer", seed: 5, student: 3);
        Force shift = sheet.Car.Balance.NormalReactions(sheet.Car.BrakingRate).Front - sheet.Car.Balance.StaticAxleLoads.Front;
        string[] said = sheet.Check(shift, shift.ToUnit(UnitsNet.Units.ForceUnit.PoundForce), "").Split('\n');
        Assert.Equal("Exercise 1: right.", said[0]);
        Assert.NotEqual("Exercise 2: right.", said[1]);
        Assert.Equal(3, said.Length);
    }
}
