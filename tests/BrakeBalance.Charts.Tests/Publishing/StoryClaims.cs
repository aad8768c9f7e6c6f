using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Publishing;

/// <summary>What a state of the story claims, against a second opinion.</summary>
internal sealed class StoryClaims(Vehicle vehicle, UnitSystem units, Frame frame)
{
    private const double Slippery = 0.3, Dry = 0.9;

    /// <summary>As near to zero as "both lock together" means, and a little on either side of it [–].</summary>
    private const double Together = 1e-3;

    private readonly LoadCase _load = vehicle.LoadCases[0];

    /// <summary>Checks titles, captions, verdict and readouts.</summary>
    public void Check(string screen, int[] at, Explorable explorable, Lazy<Setting> setting)
    {
        foreach (Figure figure in frame.Figures)
        {
            // What a caption speaks of is in the picture, and no key names a mark that is not.
            Assert.All(figure.Layers.OfType<MarkerLayer>(), marks => Assert.All(marks.X.Zip(marks.Y), at => Assert.True(
                at.First >= 0 && at.First <= figure.XAxis.Maximum && at.Second >= 0 && at.Second <= figure.YAxis.Maximum,
                $"{figure.Id}: {marks.Name} at {at} lies outside {figure.XAxis.Maximum}, {figure.YAxis.Maximum}.")));
            Assert.Equal(figure.Caption.Contains("The ring is", StringComparison.Ordinal) && figure == frame.Figures[0],
                figure == frame.Figures[0] && figure.Layers.Any(layer => layer.Name == "first wheels lock"));
        }

        switch (screen)
        {
            case "stop":
                Stop(double.Parse(explorable.Controls[0].Settings[at[0]].Split(' ')[0], CultureInfo.InvariantCulture));
                break;
            case "above":
                Above(at[0], double.Parse(explorable.Controls[1].Settings[at[1]].Split('\u00a0', ' ')[0], CultureInfo.InvariantCulture));
                break;
            case "split":
                Split([.. explorable.Controls[0].Settings.Select(text => double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture))],
                    at[0]);
                break;
            case "straight":
                Straight(Finding.NamedRoads(vehicle)[at[0]].Adhesion);
                break;
            case "knee":
                Knee(KneeStory.Knees(setting.Value, units).Knees[at[0]], KneeStory.SlopesOf(setting.Value) is var (slopes, own)
                    ? slopes[own] : 0);
                break;
            case "metering":
                Metering(Number(explorable.Controls[0].Settings[at[0]]));
                break;
            default:
                All(KneeStory.Knees(setting.Value, units).Knees[at[0]], KneeStory.SlopesOf(setting.Value).Slopes[at[1]],
                    vehicle.LoadCases[at[2]], Finding.NamedRoads(vehicle)[at[3]].Adhesion);
                break;
        }
    }

    private (string, Func<Match, bool>) Middles =>
        (@" Drawn with each range of the file at its middle\.", _ => vehicle.Uncertainty is not null);

    private void Stop(double rate)
    {
        double weight = Weight(_load), moved = weight * rate * _load.CentreOfGravityHeight / vehicle.Wheelbase;
        double front = (weight - StaticRear(_load) + moved) / weight, lost = moved / StaticRear(_load);
        Says(Title,
            (@"At rest the front wheels carry (\d+) % of the car", m => rate == 0 && Near(m, 1, 100 * front)),
            (@"Braking at (\d\.\d\d) g, the front wheels carry (\d+) % of the car",
                m => rate > 0 && Near(m, 1, rate, 0.01) && Near(m, 2, 100 * front)));
        Says(frame.Verdict!.Text,
            (@"The rear wheels carry the other (\d+) %\.", m => rate == 0 && Near(m, 1, 100 * (1 - front))),
            (@"It is as if (\d+) (kg|lb) had moved from the rear wheels to the front wheels\. ", m => rate > 0
                && Near(m, 1, moved / 9.80665 / (units == UnitSystem.Us ? 0.45359237 : 1), units == UnitSystem.Us ? 5 : 1)),
            (@"The rear wheels have lost (\d+) % of their load, and grip goes with load\.", m => Near(m, 1, 100 * lost)));
    }

    private void Above(int locked, double time)
    {
        var setup = StopSetup.From(vehicle with { Control = null }, _load, Dry);
        YawSample Now(Axle axle) => Runs.GetValue(vehicle, _ => [.. new[] { Axle.Front, Axle.Rear }.Select(one =>
            YawStop.Run(YawStop.WithOnlyLocked(setup.Car, one), Pressure.FromBars(100), setup.BuildUp, Speed.FromKilometersPerHour(60),
                YawDisturbance.Crown))])[(int)axle == (int)Axle.Front ? 0 : 1].Trace.Last(sample => sample.TimeSeconds <= time);
        Axle chosen = locked == 0 ? Axle.Front : Axle.Rear, other = locked == 0 ? Axle.Rear : Axle.Front;
        string name = locked == 0 ? "Front" : "Rear", others = locked == 0 ? "rear" : "front";
        double Degrees(Axle axle) => Math.Abs(Now(axle).HeadingRadians) * 180 / Math.PI;
        Says(Title, ($@"{name} wheels locked: after (\d\.\d\d|\d+\.\d+|\d+) s the car has turned by (\d+)° and does (\d+) (km/h|mph)", m =>
            Near(m, 1, time, 0.01) && Near(m, 2, Degrees(chosen))
            && Near(m, 3, Now(chosen).SpeedMetresPerSecond * (units == UnitSystem.Us ? 3600 / 1609.344 : 3.6))));
        Says(frame.Verdict!.Text,
            ($@"With the {others} wheels locked instead, it would have turned by (\d+)°\.", m => Near(m, 1, Degrees(other))));
        // From the first second on, until the car all but stands, the wheels are as said.
        Assert.True(time < 1 || Now(chosen).SpeedMetresPerSecond < 1 || Now(chosen).Wheels[chosen] == WheelState.Locked, "They turn.");
    }

    private void Split(double[] rates, int at)
    {
        double Front(double rate) => 100 * Ideal(_load, rate).Front / (Ideal(_load, rate).Front + Ideal(_load, rate).Rear);
        Says(Title, (@"At (\d\.\d\d) g the perfect split is (\d+) % in front and (\d+) % at the rear", m =>
            Near(m, 1, rates[at], 0.01) && Near(m, 2, Front(rates[at])) && Near(m, 3, 100 - Front(rates[at]))
            && Value(m, 2) + Value(m, 3) == 100));
        Says(frame.Verdict!.Text,
            (@"Split so, front and rear use the same part of their grip\. ", _ => true),
            (@"But (\d+) % in front is right at (\d\.\d\d) g alone: ", m => Near(m, 1, Front(rates[at])) && Near(m, 2, rates[at], 0.01)),
            (@"at (\d\.\d\d) g (\d+) %, at (\d\.\d\d) g (\d+) % belong there\.", m => at % (rates.Length - 1) > 0
                && Near(m, 1, rates[0], 0.01) && Near(m, 2, Front(rates[0]))
                && Near(m, 3, rates[^1], 0.01) && Near(m, 4, Front(rates[^1]))),
            (@"at (\d\.\d\d) g (\d+) % belong there\.", m => at % (rates.Length - 1) == 0
                && rates[at == 0 ? ^1 : 0] is var other && Near(m, 1, other, 0.01) && Near(m, 2, Front(other))));
    }

    private void Straight(double adhesion)
    {
        BalanceModel model = Plain(_load);
        Lock? found = FirstLock(model, adhesion);
        double[] crossings = [.. Crossings(model)];
        Says(Title, Locks(Where(adhesion), found));
        Says(frame.Verdict!.Text, [.. Consequence(found),
            (@"The line does not cross the curve in this picture\. ?", _ => crossings.Length == 0),
            (@"The line crosses the curve at (\d\.\d\d) g( and at (\d\.\d\d) g)*\. ?", m =>
            {
                double[] shown = [.. Regex.Matches(m.Value, @"\d\.\d\d").Select(one => Parse(one.Value))];
                return shown.Length == crossings.Length && shown.Zip(crossings).All(pair => Math.Abs(pair.First - pair.Second) < 0.006);
            }),
            (@"Where the first wheels lock, the line is (above|below|on) the curve\.", m => found is { } one && m.Groups[1].Value switch
            {
                "above" => one.MayBe("rear") && Height(one) > -1e-3,
                "below" => one.MayBe("front") && Height(one) < 1e-3,
                _ => one.MayBe("both"),
            })]);
        bool bare = vehicle.Hydraulics.FrontValves.IsEmpty && vehicle.Hydraulics.RearValves.IsEmpty;
        Says(frame.Figures[0].Caption, Middles,
            ($@"The {Regex.Escape(vehicle.Name)} with every valve taken out\.", _ => !bare),
            ($@"The {Regex.Escape(vehicle.Name)} as it is: it has no valves\.", _ => bare), Ring(found));
    }

    private void Knee(Pressure knee, double slope)
    {
        Assert.True(vehicle.Hydraulics.RearProportioningValve?.Adjustment is not { } screw || screw.TurnsFor(knee) is not null,
            "The story offers what the adjuster does not reach.");
        BalanceModel open = Plain(_load), model = Plain(_load, new ProportioningValve { Knee = knee, Slope = slope });
        Lock? found = FirstLock(model, Dry);
        Says(Title, [(@"Knee at ([\d.]+) (bar|psi): ", m => Near(m, 1, Shown(knee), units == UnitSystem.Us ? 1 : 0.1)),
            .. Locks("on a dry road", found)]);
        double inlet = (found?.State.MasterPascals ?? 0) * vehicle.Hydraulics.Split.RearToFrontPressureRatio;
        double held = Math.Max(0, (1 - slope) * (inlet - knee.Pascals));
        Says(frame.Verdict!.Text, [.. Consequence(found),
            (@"When the first wheels lock, the valve holds ([\d.]+) (bar|psi) back\. ", m => found is not null && held > 0
                && Near(m, 1, Shown(Pressure.FromPascals(held)), units == UnitSystem.Us ? 10.1 : 0.51)),
            (@"When the first wheels lock, the valve holds nothing back\. ", _ => found is not null && held < 1e3),
            (@"Above the knee it lets nothing more through\. ", _ => slope == 0),
            (@"Above the knee it lets all of any further pressure too through\. ", _ => slope == 1),
            (@"Above the knee it lets only (\d+) % of any further pressure through\. ", m => slope < 1 && Near(m, 1, 100 * slope)),
            (@"Without the valve ", _ => true), .. Clause(FirstLock(open, Dry)), (@"\.", _ => true)]);
        bool fitted = vehicle.Hydraulics.RearProportioningValve is not null;
        int valves = vehicle.Hydraulics.FrontValves.Length + vehicle.Hydraulics.RearValves.Length;
        Says(frame.Figures[0].Caption, Middles,
            ($"The {Regex.Escape(vehicle.Name)} with its valve in the rear line", _ => fitted),
            ($"The {Regex.Escape(vehicle.Name)} with such a valve in the rear line, which it does not have", _ => !fitted),
            (@"; every other valve is taken out\.", _ => valves > (fitted ? 1 : 0)), (@"\.", _ => valves == (fitted ? 1 : 0)), Ring(found));
    }

    private void Metering(double pascals)
    {
        MeteringValve? valve = vehicle.Hydraulics.FrontValves.OfType<MeteringValve>().FirstOrDefault();
        BalanceModel with = new(vehicle, _load);
        BalanceModel without = new(vehicle with { Hydraulics = vehicle.Hydraulics with { FrontValves = [] } }, _load);
        (double opening, double blend) = (valve?.OpeningPressure.Pascals ?? 0, valve?.BlendPressure.Pascals ?? 0);
        double through = pascals >= blend ? pascals : pascals <= opening ? 0 : blend / (blend - opening) * (pascals - opening);
        Says(Title,
            ($"The {Regex.Escape(vehicle.Name)} has no metering valve", _ => valve is null),
            (@"Of ([\d.]+) (bar|psi) the metering valve lets nothing through to the front",
                m => valve is not null && Pressed(m) && pascals <= opening + 1),
            (@"Of ([\d.]+) (bar|psi) the metering valve lets everything through to the front",
                m => valve is not null && Pressed(m) && pascals >= blend - 1),
            (@"Of ([\d.]+) (bar|psi) the metering valve lets ([\d.]+) (bar|psi) through to the front", m => valve is not null && Pressed(m)
                && pascals > opening && pascals < blend
                && Near(m, 3, Shown(Pressure.FromPascals(through)), units == UnitSystem.Us ? 10.1 : 0.51)));
        BalanceState state = with.StateAt(pascals);
        double all = state.FrontForceNewtons + state.RearForceNewtons;
        string[] parts = frame.Verdict!.Text.Split("; without the metering valve ");
        Assert.Equal(valve is null ? 1 : 2, parts.Length);
        Says(parts[0], [
            (@"No brake has taken hold yet\. ", _ => all == 0),
            (@"The rear brakes do (\d+) % of the braking now\. ", m => all > 0 && Near(m, 1, 100 * state.RearForceNewtons / all)),
            ("On a slippery road ", _ => true), .. Clause(FirstLock(with, Slippery)), (@"\.", _ => valve is null)]);
        Says(valve is null ? "" : parts[1], [.. Clause(FirstLock(without, Slippery)), (@"\.", _ => true)]);
        bool Pressed(Match m) => Near(m, 1, Shown(Pressure.FromPascals(pascals)), units == UnitSystem.Us ? 10.1 : 0.51);
    }

    private void All(Pressure knee, double slope, LoadCase load, double adhesion)
    {
        var model = new BalanceModel(vehicle.WithRearKnee(knee, slope), load);
        Lock? found = FirstLock(model, adhesion);
        Says(Title, [
            ("No wheel locks here", _ => found is null),
            ("At the limit of this road the line is on the wrong side of the curve: ", _ => Is("rear")),
            ("At the limit of this road the line is on the safe side of the curve: ", _ => Is("front")),
            ("At the limit of this road the line is on the curve: ", _ => Is("both")), .. Clause(found)]);
        Says(frame.Verdict!.Text,
            (@"No wheel locks: the pressure does not go high enough\.", _ => found is null),
            (@"Danger: the rear wheels lock first, at (\d\.\d\d) g\. The car can spin\.", m => Is("rear") && At(m)),
            (@"The front wheels lock first, at (\d\.\d\d) g\. The car slides straight on and cannot steer, but it does not spin\.",
                m => Is("front") && At(m)),
            (@"All four wheels lock together, at (\d\.\d\d) g\. Nothing is left in hand\.", m => Is("both") && At(m)));
        Says(frame.Readouts[0].Value, ("no wheel", _ => found is null), ("rear wheels", _ => Is("rear")),
            ("front wheels", _ => Is("front")), ("all wheels", _ => Is("both")));
        Says(frame.Readouts[1].Value, ("–", _ => found is null), (@"(\d\.\d\d) g", At));
        Says(frame.Readouts[2].Value, ("–", _ => found is null),
            (@"(\d+) %", m => Near(m, 1, 100 * Efficiency(found!, load, adhesion), 1.02)));
        Says(frame.Figures[1].Title,
            ("The valve lets everything through to the rear", _ => slope == 1),
            (@"Above ([\d.]+) (bar|psi) the valve lets nothing more through to the rear", m => slope == 0 && Knee(m)),
            (@"Above ([\d.]+) (bar|psi) the valve lets only (\d+) % of any further pressure through to the rear",
                m => slope is > 0 and < 1 && Knee(m) && Near(m, 3, 100 * slope)));
        Says(frame.Figures[2].Title,
            ("No wheel is at its limit", _ => found is null),
            (@"When the rear lets go, the front uses (\d+) % of its grip",
                m => Is("rear") && Near(m, 1, 100 * Used(found!, Axle.Front, adhesion), 1.1)),
            (@"When the front lets go, the rear uses (\d+) % of its grip",
                m => Is("front") && Near(m, 1, 100 * Used(found!, Axle.Rear, adhesion), 1.1)),
            ("Front and rear let go at the same moment", _ => Is("both")));
        Assert.Equal(vehicle.Hydraulics.FrontValves.OfType<MeteringValve>().Any(),
            frame.Figures[1].Caption.Contains("another valve keeps the front brakes waiting", StringComparison.Ordinal));
        bool Is(string which) => found?.MayBe(which) == true;
        bool At(Match m) => found is not null && Near(m, 1, found.State.BrakingRate, 0.011);
        bool Knee(Match m) => Near(m, 1, Shown(knee), units == UnitSystem.Us ? 1 : 0.1);
    }

    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<Vehicle, YawResult[]> Runs = [];

    private string Title => frame.Figures[0].Title;

    private static (string, Func<Match, bool>)[] Locks(string where, Lock? found) =>
        [($"{where} ", _ => true), ($"{char.ToUpperInvariant(where[0])}{where[1..]} ", _ => true), .. Clause(found)];

    private static (string, Func<Match, bool>)[] Clause(Lock? found) =>
    [
        ("no wheel locks", _ => found is null),
        (@"the front wheels lock first, at (\d\.\d\d) g", m => found?.MayBe("front") == true && Near(m, 1, found.State.BrakingRate, 0.011)),
        (@"the rear wheels lock first, at (\d\.\d\d) g", m => found?.MayBe("rear") == true && Near(m, 1, found.State.BrakingRate, 0.011)),
        (@"all wheels lock together, at (\d\.\d\d) g", m => found?.MayBe("both") == true && Near(m, 1, found.State.BrakingRate, 0.011)),
    ];

    private static (string, Func<Match, bool>)[] Consequence(Lock? found) =>
    [
        (@"The pressure does not go high enough to lock a wheel\. ", _ => found is null),
        (@"Danger: the car can spin\. ", _ => found?.MayBe("rear") == true),
        (@"The car slides straight on and cannot steer, but it does not spin\. ", _ => found?.MayBe("front") == true),
        (@"Nothing is left in hand\. ", _ => found?.MayBe("both") == true),
    ];

    private static (string, Func<Match, bool>) Ring(Lock? found) =>
        (@" The ring is the moment at which the first wheels lock\.", _ => found is not null);

    /// <summary>Takes a text apart, rule by rule; each rule must hold, and nothing may be left.</summary>
    private static void Says(string text, params (string Pattern, Func<Match, bool> Holds)[] rules)
    {
        string left = text.Replace('\u00a0', ' ');
        while (left.Length > 0)
        {
            (string pattern, Func<Match, bool> holds) = rules.FirstOrDefault(rule => Regex.IsMatch(left, "^(?:" + rule.Pattern + ")"));
            Assert.True(pattern is not null, $"nobody checks \"{left}\"");
            Match match = Regex.Match(left, "^(?:" + pattern + ")");
            Assert.True(holds(match),
                $"untrue: \"{match.Value}\" in \"{text}\"");
            left = left[match.Length..];
        }
    }

    private string Where(double adhesion) => Finding.NamedRoads(vehicle).Single(road => road.Adhesion == adhesion).Where;

    private static double Value(Match match, int group) => Parse(match.Groups[group].Value);

    private static double Parse(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static bool Near(Match match, int group, double value, double step = 1) =>
        Math.Abs(Value(match, group) - value) <= (step / 2) + 1e-6;

    private double Number(string setting) => units == UnitSystem.Us
        ? Pressure.FromPoundsForcePerSquareInch(Parse(setting.Split('\u00a0', ' ')[0])).Pascals
        : Pressure.FromBars(Parse(setting.Split('\u00a0', ' ')[0])).Pascals;

    private double Shown(Pressure pressure) => units == UnitSystem.Us ? pressure.PoundsForcePerSquareInch : pressure.Bars;

    private static double Weight(LoadCase load) => load.Mass.Kilograms * 9.80665;

    private double StaticRear(LoadCase load) => Weight(load) * (load.FrontAxleToCentreOfGravity / vehicle.Wheelbase);

    private (double Front, double Rear) Loads(LoadCase load, double rate)
    {
        double rear = StaticRear(load) - (Weight(load) * rate * (load.CentreOfGravityHeight / vehicle.Wheelbase));
        return (Weight(load) - rear, rear);
    }

    private static double Grip(Tyre tyre, double load, double adhesion) =>
        load * tyre.AdhesionOn(adhesion, Force.FromNewtons(Math.Max(0, load) / 2));

    private (double Front, double Rear) Ideal(LoadCase load, double rate)
    {
        (double front, double rear) = Loads(load, rate);
        (double one, double two) = (Grip(vehicle.Tyres.Front, front, 1), Grip(vehicle.Tyres.Rear, rear, 1));
        double braking = (rate - vehicle.RollingResistanceCoefficient) * Weight(load);
        return (braking * one / (one + two), braking * two / (one + two));
    }

    /// <summary>The car with these valves in the rear line and none in front.</summary>
    private BalanceModel Plain(LoadCase load, params ImmutableArray<PressureValve> rear) => new(
        vehicle with
        {
            Hydraulics = new BrakeHydraulics
            {
                Split = vehicle.Hydraulics.Split,
                MaximumPressure = vehicle.Hydraulics.MaximumPressure,
                RearValves = rear,
            },
        },
        load);

    /// <summary>Where the pressure, raised step by step, first brings an axle to what the road gives it; null when it never does.</summary>
    private Lock? FirstLock(BalanceModel model, double adhesion)
    {
        (double Pascals, BalanceState State)? front = Reached(Axle.Front), rear = Reached(Axle.Rear);
        if (front is null && rear is null)
        {
            return null;
        }

        bool frontFirst = rear is null || front?.Pascals <= rear.Value.Pascals;
        (BalanceState first, BalanceState? second) = frontFirst ? (front!.Value.State, rear?.State) : (rear!.Value.State, front?.State);
        return new(first, frontFirst, second is { } other ? other.BrakingRate - first.BrakingRate : double.PositiveInfinity);

        (double, BalanceState)? Reached(Axle axle)
        {
            const int Steps = 600;
            double top = model.MaximumPressure.Pascals, before = 0;
            for (int i = 1; i <= Steps; i++)
            {
                double now = top * i / Steps;
                if (Over(model.StateAt(now), axle))
                {
                    for (int halving = 0; halving < 40; halving++)
                    {
                        double middle = (before + now) / 2;
                        (before, now) = Over(model.StateAt(middle), axle) ? (before, middle) : (middle, now);
                    }

                    return (now, model.StateAt(now));
                }

                before = now;
            }

            return null;
        }

        bool Over(BalanceState state, Axle axle) => axle == Axle.Front
            ? state.FrontForceNewtons > 0 && state.FrontForceNewtons >= Grip(vehicle.Tyres.Front, state.FrontNormalNewtons, adhesion)
            : state.RearForceNewtons > 0 && state.RearForceNewtons >= Grip(vehicle.Tyres.Rear, state.RearNormalNewtons, adhesion);
    }

    /// <summary>Decelerations at which the line drawn crosses the curve within the picture.</summary>
    private IEnumerable<double> Crossings(BalanceModel model)
    {
        (double right, double top) = (frame.Figures[0].XAxis.Maximum!.Value, frame.Figures[0].YAxis.Maximum!.Value);
        double? last = null;
        for (int i = 1; i <= 20_000; i++)
        {
            BalanceState state = model.StateAt(model.MaximumPressure.Pascals * i / 20_000);
            if (state.BrakingRate <= 0.02 || state.RearNormalNewtons <= 0)
            {
                continue;
            }

            double now = (state.RearForceNewtons * Grip(vehicle.Tyres.Front, state.FrontNormalNewtons, 1))
                - (state.FrontForceNewtons * Grip(vehicle.Tyres.Rear, state.RearNormalNewtons, 1));
            if (last * now < 0 && state.FrontForceNewtons <= right && state.RearForceNewtons <= top)
            {
                yield return state.BrakingRate;
            }

            last = now == 0 ? last : now;
        }
    }

    /// <summary>How far a point lies above the curve, over the rear force there.</summary>
    private double Height(Lock found)
    {
        (double low, double high) = (0, 3.0);
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Loads(_load, middle).Rear > 0 && Ideal(_load, middle).Front < found.State.FrontForceNewtons
                ? (middle, high) : (low, middle);
        }

        double ideal = Math.Max(0, Ideal(_load, low).Rear);
        return (found.State.RearForceNewtons - ideal) / Weight(_load);
    }

    private double Efficiency(Lock found, LoadCase load, double adhesion)
    {
        double rolling = vehicle.RollingResistanceCoefficient;
        (double low, double high) = (0, 3.0);
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (double front, double rear) = Loads(load, middle);
            bool more = Grip(vehicle.Tyres.Front, front, adhesion) + Grip(vehicle.Tyres.Rear, Math.Max(0, rear), adhesion)
                > (middle - rolling) * Weight(load);
            (low, high) = more ? (middle, high) : (low, middle);
        }

        return (found.State.FrontForceNewtons + found.State.RearForceNewtons) / ((low - rolling) * Weight(load));
    }

    private double Used(Lock found, Axle axle, double adhesion) => axle == Axle.Front
        ? found.State.FrontForceNewtons / Grip(vehicle.Tyres.Front, found.State.FrontNormalNewtons, adhesion)
        : found.State.RearForceNewtons / Grip(vehicle.Tyres.Rear, found.State.RearNormalNewtons, adhesion);

    private sealed record Lock(BalanceState State, bool FrontFirst, double Gap)
    {
        /// <summary>Whether this may be said of it; at the edge of "together" either may.</summary>
        public bool MayBe(string which) => which switch
        {
            "both" => Gap < 1.5 * Together,
            "front" => FrontFirst && Gap > 0.5 * Together,
            _ => !FrontFirst && Gap > 0.5 * Together,
        };
    }
}
