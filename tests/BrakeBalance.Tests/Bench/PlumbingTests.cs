using System.Collections.Immutable;
using BrakeBalance.Assist;
using BrakeBalance.Bench;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tests.Hydraulics;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Bench;

/// <summary>Plumbing of a pump-fed booster: what is wrong, what the return does.</summary>
public sealed class PlumbingTests
{
    private static PlumbingNode Node(string name, PlumbingPart part) => new() { Name = name, Part = part };

    private static PlumbingLine Line(string from, string to, double millimetres = 9.5, double metres = 0.8, double? bars = 200) => new()
    {
        From = from,
        To = to,
        Bore = Length.FromMillimeters(millimetres),
        Length = Length.FromMeters(metres),
        WorkingPressure = bars is { } rated ? Pressure.FromBars(rated) : null,
    };

    private static PlumbingGraph Sound() => new()
    {
        ReliefPressure = Pressure.FromBars(95),
        Nodes = [Node("tank", PlumbingPart.Reservoir), Node("pump", PlumbingPart.Pump), Node("booster", PlumbingPart.Booster),
            Node("box", PlumbingPart.SteeringGear)],
        Lines =
        [
            Line("tank.outlet", "pump.inlet", 16), Line("pump.outlet", "booster.pressure"), Line("booster.gear", "box.pressure"),
            Line("box.return", "tank.return1"), Line("booster.return", "tank.return2"),
        ],
    };

    private static PlumbingGraph WithTee(string booster, string gear, string tank) => Sound() with
    {
        Nodes = Sound().Nodes.Add(Node("tee", PlumbingPart.Tee)),
        Lines = [.. Sound().Lines.Take(3), Line("box.return", $"tee.{gear}"), Line("booster.return", $"tee.{booster}"),
            Line($"tee.{tank}", "tank.return1")],
    };

    private static BenchSeverity Worst(PlumbingGraph graph) => PlumbingCheck.Of(graph).Max(finding => finding.Severity);

    private static BenchFinding Only(PlumbingGraph graph, string where) =>
        PlumbingCheck.Of(graph).First(finding => finding.Severity == BenchSeverity.Wrong && finding.Where == where);

    [Fact]
    public void Separate_returns_are_sound() => Assert.Equal(BenchSeverity.Pass, Worst(Sound()));

    [Fact]
    public void A_pump_with_its_own_reservoir_needs_no_suction_line()
    {
        PlumbingGraph graph = Sound() with
        {
            Nodes = [Node("pump", PlumbingPart.PumpWithReservoir), .. Sound().Nodes.Skip(2)],
            Lines = [.. Sound().Lines.Skip(1).Select(line => line with { To = line.To.Replace("tank", "pump", StringComparison.Ordinal) })],
        };
        Assert.Equal(BenchSeverity.Pass, Worst(graph));
    }

    [Fact]
    public void A_tee_with_the_booster_on_its_straight_run_is_accepted_with_a_caution()
    {
        Assert.Equal(BenchSeverity.Caution, Worst(WithTee("run1", "branch", "run2")));
        Assert.Equal(BenchSeverity.Caution, Worst(WithTee("run2", "branch", "run1")));
    }

    [Theory]
    [InlineData("branch", "run1", "run2")]
    [InlineData("run1", "run2", "branch")]
    public void A_tee_with_the_booster_round_the_corner_is_wrong(string booster, string gear, string tank) =>
        Assert.Contains("on its branch", Only(WithTee(booster, gear, tank), "tee").What, StringComparison.Ordinal);

    [Fact]
    public void The_booster_behind_the_gear_is_wrong()
    {
        PlumbingGraph graph = Sound() with
        {
            Lines = [Line("tank.outlet", "pump.inlet", 16), Line("pump.outlet", "box.pressure"), Line("box.return", "booster.pressure"),
                Line("booster.gear", "tank.return1"), Line("booster.return", "tank.return2")],
        };
        BenchFinding finding = Only(graph, "pump.outlet");
        Assert.Contains("leads to box.pressure, not to booster.pressure", finding.What, StringComparison.Ordinal);
        Assert.Contains("The booster comes first", finding.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tee_in_the_pressure_line_is_wrong()
    {
        PlumbingGraph graph = Sound() with
        {
            Nodes = Sound().Nodes.Add(Node("tee", PlumbingPart.Tee)),
            Lines = [Line("tank.outlet", "pump.inlet", 16), Line("pump.outlet", "tee.run1"), Line("tee.run2", "booster.pressure"),
                Line("tee.branch", "box.pressure"), Line("box.return", "tank.return1"), Line("booster.return", "tank.return2")],
        };
        Assert.Contains("tee in the pressure line", Only(graph, "tee").What, StringComparison.Ordinal);
        Assert.Contains("steering would get no oil", Only(graph, "booster.gear").Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_blocked_booster_return_is_told_with_what_it_does()
    {
        BenchFinding finding = Only(Sound() with { Lines = Sound().Lines.RemoveAt(4) }, "booster.return");
        Assert.Equal("is not connected.", finding.What);
        Assert.Contains("brakes would stay on", finding.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cooler_in_the_boosters_return_is_a_caution_and_in_a_pressure_line_wrong()
    {
        PlumbingGraph cooled = Sound() with
        {
            Nodes = Sound().Nodes.Add(Node("cooler", PlumbingPart.Cooler)),
            Lines = [.. Sound().Lines.Take(4), Line("booster.return", "cooler.inlet"), Line("cooler.outlet", "tank.return2")],
        };
        Assert.Equal(BenchSeverity.Caution, Worst(cooled));
        PlumbingGraph pressed = Sound() with
        {
            Nodes = Sound().Nodes.Add(Node("cooler", PlumbingPart.Cooler)),
            Lines = [Sound().Lines[0], Line("pump.outlet", "cooler.inlet"), Line("cooler.outlet", "booster.pressure"),
                .. Sound().Lines.Skip(2)],
        };
        Assert.Contains("cooler in a pressure line", Only(pressed, "cooler").What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pressure_line_below_the_relief_pressure_is_wrong_and_one_of_unknown_rating_a_caution()
    {
        PlumbingGraph weak = Sound() with
        {
            Lines = Sound().Lines.Replace(Sound().Lines[1], Line("pump.outlet", "booster.pressure", bars: 17)),
        };
        Assert.Contains("good for 17 bar", Only(weak, "pump.outlet → booster.pressure").What, StringComparison.Ordinal);
        PlumbingGraph unknown = Sound() with
        {
            Lines = [
            .. Sound().Lines.Select((line, i) => i == 2 ? line with { WorkingPressure = null } : line)]
        };
        Assert.Equal(BenchSeverity.Caution, Worst(unknown));
    }

    [Fact]
    public void A_misspelt_port_gets_a_suggestion()
    {
        PlumbingGraph graph = Sound() with { Lines = [.. Sound().Lines.Take(4), Line("booster.retrun", "tank.return2")] };
        BenchFinding finding = PlumbingCheck.Of(graph)[0];
        Assert.Contains("\"booster\" has no port \"retrun\". Did you mean \"return\"?", finding.What, StringComparison.Ordinal);
    }

    [Property]
    public void Taking_any_needed_line_away_is_found(byte which)
    {
        ImmutableArray<PlumbingLine> lines = Sound().Lines;
        Assert.Equal(BenchSeverity.Wrong, Worst(Sound() with { Lines = lines.RemoveAt(which % lines.Length) }));
    }

    [Property]
    public void Turning_any_line_round_is_found(byte which)
    {
        ImmutableArray<PlumbingLine> lines = Sound().Lines;
        PlumbingLine line = lines[which % lines.Length];
        Assert.Equal(BenchSeverity.Wrong,
            Worst(Sound() with { Lines = lines.Replace(line, line with { From = line.To, To = line.From }) }));
    }

    /// <summary>
    /// Any wiring at all: if nothing is called wrong, the oil really goes where it must; and every finding says where, what and why.
    /// </summary>
    [Property(MaxTest = 2000)]
    public void Whatever_is_not_called_wrong_works(byte[] targets)
    {
        string[] from = ["tank.outlet", "pump.outlet", "booster.gear", "booster.return", "box.return", "tee.run2"];
        string[] to = ["pump.inlet", "booster.pressure", "box.pressure", "tank.return1", "tank.return2", "tee.run1", "tee.branch"];
        bool tee = targets.Length > 5;
        PlumbingGraph graph = Sound() with
        {
            Nodes = tee ? Sound().Nodes.Add(Node("tee", PlumbingPart.Tee)) : Sound().Nodes,
            Lines = [.. targets.Take(tee ? 6 : 5).Select((target, i) => Line(from[i], to[target % (tee ? 7 : 5)]))],
        };
        ImmutableArray<BenchFinding> findings = PlumbingCheck.Of(graph);
        Assert.All(findings, finding => Assert.True(finding.Where.Length > 0 && finding.What.Length > 0 && finding.Why.EndsWith('.')));
        if (findings.Any(finding => finding.Severity == BenchSeverity.Wrong))
        {
            Assert.DoesNotContain(findings, finding => finding.Severity == BenchSeverity.Pass);
            return;
        }

        Assert.Equal("booster", graph.Follow("pump.outlet").End!.Name);
        Assert.Equal("box", graph.Follow("booster.gear").End!.Name);
        Assert.True(graph.Follow("booster.return").ReachesReservoir);
        Assert.True(graph.Follow("box.return").ReachesReservoir);
    }

    private static ReturnFlow Flow(PlumbingGraph graph, double celsius = 60) => new()
    {
        Plumbing = graph,
        PumpFlow = VolumeFlow.FromLitersPerMinute(9),
        Temperature = Temperature.FromDegreesCelsius(celsius),
    };

    private static readonly HydraulicBooster Booster = new()
    {
        BoostRatio = 4,
        ReliefPressure = Pressure.FromBars(95),
        PumpFlow = VolumeFlow.FromLitersPerMinute(9),
        PowerPistonDiameter = Length.FromMillimeters(35),
        ReturnSpringForce = Force.FromNewtons(60),
    };

    private static readonly SingleMasterCylinder Master = new() { Bore = Length.FromInches(1.125), Stroke = Length.FromMillimeters(38) };

    [Fact]
    public void A_return_of_its_own_stands_without_pressure_and_a_shared_one_does_not()
    {
        Assert.Equal(0, Flow(Sound()).BackPressure(VolumeFlow.Zero).Pascals);
        PlumbingGraph shared = WithTee("run1", "branch", "run2");
        ReturnLineLoss[] lines = [.. Flow(shared).Lines(VolumeFlow.Zero)];
        Assert.False(lines[0].Shared);
        Assert.True(lines[1].Shared);
        Assert.Equal(9, lines[1].Flow.LitersPerMinute, 1e-9);
        Assert.True(Flow(shared).BackPressure(VolumeFlow.Zero) > Pressure.Zero);
    }

    [Fact]
    public void The_usual_layouts_are_sound_and_the_joined_one_carries_a_caution()
    {
        Length bore = Length.FromMillimeters(9.5), length = Length.FromMeters(1);
        Assert.Equal(BenchSeverity.Pass, Worst(UsualPlumbing.SeparateReturns(bore, length, Pressure.FromBars(95))));
        Assert.Equal(BenchSeverity.Caution, Worst(UsualPlumbing.JoinedReturns(bore, length, Pressure.FromBars(95))));
    }

    [Property]
    public void Back_pressure_grows_with_flow_and_length_and_falls_with_bore(byte flow, byte more, byte celsius)
    {
        VolumeFlow less = VolumeFlow.FromLitersPerMinute(flow / 16.0);
        ReturnFlow of = Flow(WithTee("run1", "branch", "run2"), celsius % 100);
        Assert.True(of.BackPressure(less) <= of.BackPressure(less + VolumeFlow.FromLitersPerMinute(more / 16.0)));
        ReturnFlow Changed(Func<PlumbingLine, PlumbingLine> change) =>
            of with { Plumbing = of.Plumbing with { Lines = [.. of.Plumbing.Lines.Select(change)] } };
        Assert.True(of.BackPressure(less) <= Changed(line => line with { Length = line.Length * 1.5 }).BackPressure(less));
        Assert.True(of.BackPressure(less) >= Changed(line => line with { Bore = line.Bore * 1.5 }).BackPressure(less));
    }

    [Fact]
    public void The_pedal_comes_back_slower_when_the_oil_is_cold()
    {
        Duration[] times = [.. new[] { 90.0, 40, 0, -20 }.Select(celsius =>
            ReleaseEffect.Of(Flow(Sound(), celsius), Booster, Master, Length.FromMillimeters(14)).ReleaseTime!.Value)];
        Assert.Equal(times.OrderBy(time => time.Seconds), times);
    }

    [Fact]
    public void At_the_release_flow_springs_and_return_lines_balance()
    {
        ReleaseEffect effect = ReleaseEffect.Of(Flow(Sound(), 0), Booster, Master, Length.FromMillimeters(14));
        Assert.Equal(effect.SpringPressure.Pascals, Flow(Sound(), 0)
            .BackPressure(effect.ReleaseFlow!.Value).Pascals, 1e-3 * effect.SpringPressure.Pascals);
        Assert.Equal(160, effect.SpringPressure.Pascals * Booster.PowerPistonArea.SquareMeters,
            1e-6); // 60 N of the booster and 100 N of the cylinder
    }

    [Fact]
    public void A_crushed_shared_return_keeps_the_brakes_on()
    {
        PlumbingGraph shared = WithTee("run1", "branch", "run2");
        PlumbingGraph crushed = shared with
        {
            Lines = shared.Lines.Replace(shared.Lines[5],
            shared.Lines[5] with { Bore = Length.FromMillimeters(4) })
        };
        ReleaseEffect effect = ReleaseEffect.Of(Flow(crushed, 0), Booster, Master, Length.FromMillimeters(14));
        Assert.Null(effect.ReleaseTime);
        Assert.Equal(BenchSeverity.Wrong, effect.Finding.Severity);

        // Statics by hand: back-pressure on the power piston less both springs, over the cylinder's bore.
        double area = Math.PI / 4 * 0.035 * 0.035, bore = Math.PI / 4 * 0.028575 * 0.028575;
        Assert.Equal(((effect.Standing.Pascals * area) - 60 - 100) / bore, effect.ResidualLinePressure.Pascals, 1);
        Assert.Contains("stay on the brakes", effect.Finding.What, StringComparison.Ordinal);
    }

    [Fact]
    public void The_makers_limit_counts_when_it_is_known()
    {
        ReturnFlow flow = Flow(WithTee("run1", "branch", "run2"));
        Pressure standing = flow.BackPressure(VolumeFlow.Zero);
        Assert.NotEqual(BenchSeverity.Wrong,
            ReleaseEffect.Of(flow, Booster, Master, Length.FromMillimeters(14), standing * 1.1).Finding.Severity);
        Assert.Equal(BenchSeverity.Wrong,
            ReleaseEffect.Of(flow, Booster, Master, Length.FromMillimeters(14), standing * 0.9).Finding.Severity);
    }

    [Fact]
    public void Oil_has_its_given_viscosities_and_is_thicker_when_colder()
    {
        var oil = new HydraulicOil();
        Assert.Equal(36, oil.ViscosityAt(Temperature.FromDegreesCelsius(40)).Centistokes, 1e-9);
        Assert.Equal(7.2, oil.ViscosityAt(Temperature.FromDegreesCelsius(100)).Centistokes, 1e-9);
        Assert.True(oil.ViscosityAt(Temperature.FromDegreesCelsius(-20)).Centistokes > 20 * oil.ViscosityAt(
            Temperature.FromDegreesCelsius(40)).Centistokes);
        Assert.Contains("150", Assert.Throws<ArgumentOutOfRangeException>(() =>
            oil.ViscosityAt(Temperature.FromDegreesCelsius(160))).Message, StringComparison.Ordinal);
    }

    [Property]
    public void Laminar_loss_is_that_of_the_brake_line_law(byte flow, byte bore, byte length)
    {
        VolumeFlow q = VolumeFlow.FromCubicMetersPerSecond((flow + 1) * 2e-8);
        Length d = Length.FromMillimeters(3 + (bore / 64.0)), l = Length.FromMeters((length + 1) / 64.0);
        var oil = Density.FromKilogramsPerCubicMeter(860);
        var viscosity = KinematicViscosity.FromCentistokes(36);
        PipeLoss loss = PipeFlow.Loss(q, d, l, oil, viscosity);
        Assert.Equal(FlowRegime.Laminar, loss.Regime);
        double law = new LaminarLine { Bore = d, Length = l, Viscosity = DynamicViscosity.FromPascalSeconds(36e-6 * 860) }.PressureDrop(
            q).Pascals;
        Assert.Equal(law, loss.Friction.Pascals, 1e-9 * law);
    }

    [Property]
    public void Friction_factor_satisfies_colebrooks_equation(ushort reynolds, byte roughness)
    {
        double re = 4000 + (reynolds * 100.0), rough = roughness / 255.0 * 0.05;
        double root = Math.Sqrt(PipeFlow.FrictionFactor(re, rough));
        Assert.Equal(1 / root, -2 * Math.Log10((rough / 3.7) + (2.51 / (re * root))), 1e-10);
    }
}
