using BrakeBalance.Charts.Exploring;
using static System.FormattableString;

namespace BrakeBalance.Charts.Lessons;

internal static partial class LessonFigures
{
    private static Explorable Utilisation(ExerciseCar car, UnitSystem units, bool isAsked)
    {
        (double[] shares, Control slider) = RearShares(car, units, isAsked);
        double[] rates = Rates[2..20], marks = [.. Enumerable.Range(10, 86).Select(i => i * 0.01)];
        return Explorable.Of(
            "lesson-utilisation",
            [slider, Control.Slider("rate", "Deceleration", Measure.InG, marks, 50, units)],
            state =>
            {
                double share = shares[state["share"]];
                double rate = marks[state["rate"]];
                double weight = car.Balance.Weight.Newtons;
                double Front(double z) => (1 - share) * z * weight / car.Balance.NormalReactions(z).Front.Newtons;
                double Rear(double z) => share * z * weight / car.Balance.NormalReactions(z).Rear.Newtons;
                bool frontLeads = Front(rate) >= Rear(rate);
                Figure figure = new FigureBuilder("lesson-utilisation-curves", units, car.Vehicle)
                    .Title(Invariant($"At a deceleration of {rate:0.00} g the {(frontLeads ? "front" : "rear")} axle ")
                        + "uses more of the road")
                    .Describe($"Adhesion used by both axles against deceleration. {Invented}",
                        Invariant($"At the deceleration chosen the front uses {Front(rate):0.00} and the rear {Rear(rate):0.00}."))
                    .X("Deceleration", "z", Measure.InG, 0.1, 0.95)
                    .Y("Adhesion used", "f₁, f₂", Measure.Number, 0, 1.4)
                    .Line("ideal, f = z", rates, rates, Tone.Ideal, Dash.Dot)
                    .Line("front axle", rates, rates.Select(Front).ToArray(), Tone.Front)
                    .Line("rear axle", rates, rates.Select(Rear).ToArray(), Tone.Rear, Dash.Dash)
                    .Points("at the deceleration chosen", new double[] { rate, rate }, new double[] { Front(rate), Rear(rate) }, Tone.Main,
                        label: "")
                    .Build();
                return new Frame([figure],
                [
                    new("Front uses", Three(Front(rate))),
                    new("Rear uses", Three(Rear(rate))),
                    new("Road needed", Three(Math.Max(Front(rate), Rear(rate)))),
                ],
                frontLeads ? new Verdict("The front axle would lock first here.", VerdictKind.Good)
                    : new Verdict("The rear axle would lock first here: the car can spin.", VerdictKind.Caution));
            });
    }

    private static Explorable Effort(ExerciseCar car, UnitSystem units)
    {
        (double vacuum, double ownRatio, double ownBore) =
            (car.Booster.Supply.Vacuum.Pascals, car.Pedal.Lever.RatioAt(Length.Zero), car.MasterBore.Meters);
        double[] vacuums = With(vacuum, 4e3, Enumerable.Range(0, 8).Select(i => i * 1e4));
        double[] ratios = With(ownRatio, 0.3, [3.0, 4.0, 5.0, 6.0]);
        double[] bores = With(ownBore, 9e-4, [0.019, 0.021, 0.023, 0.025]);
        double[] pedals = [.. Enumerable.Range(0, 21).Select(i => i * 25.0)];
        return Explorable.Of(
            "lesson-effort",
            [
                Control.Slider("vacuum", "Vacuum in the booster", Measure.Vacuum, vacuums, Array.IndexOf(vacuums, vacuum), units),
                Control.Slider("ratio", "Pedal ratio", Measure.Number, ratios, Array.IndexOf(ratios, ownRatio), units),
                Control.Slider("bore", "Bore of the master cylinder", Measure.Travel, bores, Array.IndexOf(bores, ownBore), units),
            ],
            state =>
            {
                Area bore = Area.FromCircleDiameter(Length.FromMeters(bores[state["bore"]]));
                Pedal pedal = car.Pedal with { Lever = new FixedRatioLever { Ratio = ratios[state["ratio"]] } };
                var supply = new VacuumSupply { Vacuum = Pressure.FromPascals(vacuums[state["vacuum"]]) };
                VacuumBooster booster = car.Booster with { Supply = supply };
                double Bare(double newtons) => (pedal.InputRodForce(Force.FromNewtons(newtons)) / bore).Pascals;
                string foot = Measure.ControlForce.Text(300, units);
                double Assisted(double newtons) => (booster.OutputForce(pedal.InputRodForce(Force.FromNewtons(newtons))) / bore).Pascals;
                FigureBuilder figure = new FigureBuilder("lesson-effort-curves", units, car.Vehicle)
                    .Title(booster.RunOut is { } at
                        ? $"The booster runs out at a pedal force of {Measure.ControlForce.Text(pedal.PedalForce(at.InputForce), units)}"
                        : "Without vacuum the booster gives nothing")
                    .Describe($"Line pressure against pedal force with and without assist, no losses. {Invented}",
                        $"At {foot} the line pressure is {Measure.LinePressure.Text(Assisted(300), units)} "
                            + $"with assist and {Measure.LinePressure.Text(Bare(300), units)} without.")
                    .X("Pedal force", "F", Measure.ControlForce, 0, 500)
                    .Y("Line pressure", "p₁", Measure.LinePressure, 0, 1.6e7)
                    .Line("with assist", pedals, pedals.Select(Assisted).ToArray(), Tone.Main)
                    .Line("no assist", pedals, pedals.Select(Bare).ToArray(), Tone.Other, Dash.Dash);
                if (booster.RunOut is { } runOut && pedal.PedalForce(runOut.InputForce).Newtons < 500)
                {
                    double force = pedal.PedalForce(runOut.InputForce).Newtons;
                    figure.Points("run-out", new double[] { force }, new double[] { Assisted(force) }, Tone.Rear, Marker.Diamond);
                }

                return new Frame([figure.Build()],
                [
                    new($"At {foot}, assisted", Measure.LinePressure.Text(Assisted(300), units)),
                    new($"At {foot}, bare", Measure.LinePressure.Text(Bare(300), units)),
                    new("Greatest assist", Measure.ControlForce.Text(booster.MaximumAssist, units)),
                ]);
            });
    }

    // Common practice: what a hard stop takes from both circuits, half of a pedal's way, half of g.
    private const double FluidCubicMetres = 6e-6, MostTravel = 0.075, StrongEnough = 0.5;

    private static Explorable FailedAssist(ExerciseCar car, UnitSystem units)
    {
        (double ownRatio, double ownBore) = (car.Pedal.Lever.RatioAt(Length.Zero), car.MasterBore.Meters);
        double[] ratios = With(ownRatio, 0.2, [3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 6.5]);
        double[] bores = With(ownBore, 9e-4, [0.017, 0.019, 0.021, 0.023, 0.025, 0.027]);
        double[] pedals = [.. Enumerable.Range(1, 32).Select(i => i * 25.0)];
        BalanceModel model = car.Balance;
        return Explorable.Of(
            "lesson-failed-assist",
            [Control.Slider("ratio", "Pedal ratio", Measure.Number, ratios, Array.IndexOf(ratios, ownRatio), units),
                Control.Slider("bore", "Bore of the master cylinder", Measure.Travel, bores, Array.IndexOf(bores, ownBore), units)],
            state =>
            {
                Area bore = Area.FromCircleDiameter(Length.FromMeters(bores[state["bore"]]));
                Pedal pedal = car.Pedal with { Lever = new FixedRatioLever { Ratio = ratios[state["ratio"]] } };
                double Rate(double newtons) => model.StateAt(Math.Min(
                    model.MaximumPressure.Pascals, (pedal.InputRodForce(Force.FromNewtons(newtons)) / bore).Pascals)).BrakingRate;
                double at500 = Rate(500), stroke = ratios[state["ratio"]] * FluidCubicMetres / bore.SquareMeters;
                string foot = Measure.ControlForce.Text(500, units);
                Figure figure = new FigureBuilder("lesson-failed-assist-curve", units, car.Vehicle)
                    .Title(Invariant($"With {foot} and no assist the brakes ask for a deceleration of {at500:0.00} g"))
                    .Describe($"Deceleration the brakes ask for against pedal force, assist gone, no losses. {Invented}",
                        Invariant($"At {foot} the brakes ask for {at500:0.00}; the tyres may give less."))
                    .X("Pedal force", "F", Measure.ControlForce, 0, 800)
                    .Y("Deceleration asked for", "z", Measure.InG, 0, 1.2)
                    .Line("no assist", pedals, pedals.Select(Rate).ToArray(), Tone.Other)
                    .Upright("rule's pedal force", 500, label: foot)
                    .Level("failed-assist rule", 0.249, label: InBoth.Only(
                        "about what a stop from 100 km/h (62 mph) in 168 m (551 ft) needs", units == UnitSystem.Us))
                    .Points($"at {foot}", new double[] { 500 }, new double[] { at500 }, Tone.Main, label: "")
                    .Build();
                return new Frame([figure],
                [
                    new($"Deceleration at {foot}", $"{Three(at500)} g"),
                    new(units == UnitSystem.Us ? "Pedal travel, 0.37 in³ of fluid" : "Pedal travel, 6 cm³ of fluid",
                        Measure.Travel.Text(stroke, units)),
                ],
                (at500 >= StrongEnough, stroke <= MostTravel) switch
                {
                    (true, true) => new Verdict("Strong enough without assist, and short enough in travel.", VerdictKind.Good),
                    (true, false) => new Verdict("Strong enough, but the pedal nears the floor.", VerdictKind.Caution),
                    (false, true) => new Verdict("Short in travel, but too weak without assist.", VerdictKind.Caution),
                    _ => new Verdict("Too weak without assist, and the pedal nears the floor.", VerdictKind.Caution),
                });
            });
    }

    private static Explorable RearLock(ExerciseCar car, UnitSystem units)
    {
        double[] adhesions = [.. Enumerable.Range(2, 10).Select(i => i * 0.1)];
        string[] set = ["no valve", "with the valve"];
        double weight = car.Balance.Weight.Newtons;
        double[] rates = Rates[..21];
        return Explorable.Of(
            "lesson-rear-lock",
            [Control.Slider("adhesion", "Adhesion of the road", Measure.Number, adhesions, 6, units),
                Control.Choice("valve", "Rear line", set)],
            state =>
            {
                double adhesion = adhesions[state["adhesion"]];
                BalanceModel model = state["valve"] == 0 ? car.WithoutValve : car.Balance;
                LockUp? lockUp = model.FirstLockUp(adhesion);
                double[] inlets = [.. Enumerable.Range(0, 57).Select(i => i * 2.5e5)];
                BalanceState[] states = [.. inlets.Select(model.StateAt).Where(s => s.FrontForceNewtons < weight)];
                double[] fronts = [.. Enumerable.Range(0, 21).Select(i => i * weight / 20)];
                double[] rears = [.. Enumerable.Range(0, 10).Select(i => i * weight / 20)];
                (double Front, double Rear)[] frontLimit =
                    [.. rears.Select(t => (model.FrontForceAtLimit(adhesion, Force.FromNewtons(t))?.Newtons ?? double.NaN, t))
                    .Where(point => point.Item1 < weight)];
                string first = lockUp?.First switch
                { null => "no axle", Axle.Front => "front axle", Axle.Rear => "rear axle", _ => "both axles" };
                string words = first is "front axle" or "rear axle" ? $"the {first} locks first"
                    : lockUp is null ? "no axle locks" : "both axles lock together";
                FigureBuilder figure = new FigureBuilder("lesson-rear-lock-plane", units, car.Vehicle)
                    .Title(Invariant($"On an adhesion of {adhesion:0.0}, {set[state["valve"]]}: {words}"))
                    .Describe($"Rear against front braking force with both locking limits. {Invented}",
                        lockUp is null ? "No limit is met within the pressure considered."
                            : Invariant($"The limit is met at a deceleration of {lockUp.At.BrakingRate:0.00} g."))
                    .X("Front braking force", "T₁", Measure.BrakeForce, 0, weight)
                    .Y("Rear braking force", "T₂", Measure.BrakeForce, 0, RearTop * weight)
                    .Line("ideal curve", rates.Select(r => model.IdealForces(r).Front.Newtons)
                        .ToArray(), rates.Select(r => model.IdealForces(r).Rear.Newtons).ToArray(), Tone.Ideal, Dash.Dot)
                    .Line("rear locks", fronts, fronts.Select(t => model.RearForceAtLimit(adhesion, Force.FromNewtons(t)).Newtons)
                        .ToArray(), Tone.Rear, Dash.Dash)
                    .Line("installed", states.Select(s => s.FrontForceNewtons).ToArray(), states.Select(s => s.RearForceNewtons)
                        .ToArray(), Tone.Main);
                if (frontLimit.Length > 1)
                {
                    figure.Line("front locks", frontLimit.Select(point => point.Front).ToArray(), frontLimit.Select(point => point.Rear)
                        .ToArray(), Tone.Front, Dash.LongDash);
                }

                if (lockUp is not null)
                {
                    figure.Points("first lock-up", new double[] { lockUp.At.BrakingForces.Front.Newtons },
                        new double[] { lockUp.At.BrakingForces.Rear.Newtons }, Tone.Main, Marker.Cross);
                }

                return new Frame([figure.Build()],
                [
                    new("Locks first", first),
                    new("At a deceleration of", lockUp is null ? "–" : Measure.InG.Text(lockUp.At.BrakingRate, units)),
                    new("Braking efficiency", lockUp is null ? "–" : Measure.Percent.Text(lockUp.Efficiency, units)),
                ],
                lockUp?.First == Axle.Rear
                    ? new Verdict("Rear first: the car can spin before the driver can react.", VerdictKind.Caution)
                    : new Verdict("Front first: the car runs straight on, unsteered.", VerdictKind.Good));
            });
    }

    // 20 °C, and 400 °C, about where street pads begin to fade (common practice).
    private const double Cold = 293.15, Fading = 673.15;

    private static string Kelvins(double rise, UnitSystem units) =>
        units == UnitSystem.Us ? Invariant($"{rise * 1.8:0} °F") : Invariant($"{rise:0} °C");

    private static Explorable Heat(ExerciseCar car, UnitSystem units, bool isAsked)
    {
        PerAxle<Force> forces = car.Balance.AtRate(car.BrakingRate)!.BrakingForces;
        // Whoever is asked finds speed and share on the sheet.
        (double ownSpeed, double ownShare) = isAsked ? (100 / 3.6, 0.7)
            : (car.Speed.MetersPerSecond, forces.Front / (forces.Front + forces.Rear));
        double[] speeds = With(ownSpeed, 1, Enumerable.Range(2, 15).Select(i => i * 10 / 3.6));
        double[] shares = With(ownShare, 0.03, [0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8]);
        double[] axis = [.. Enumerable.Range(0, 46).Select(i => i)];
        double mass = car.LoadCase.Mass.Kilograms;
        return Explorable.Of(
            "lesson-heat",
            [Control.Slider("speed", "Speed before the stop", Measure.Speed, speeds, Array.IndexOf(speeds, ownSpeed), units),
                Control.Slider("share", "Front axle's share", Measure.Percent, shares, Array.IndexOf(shares, ownShare), units)],
            state =>
            {
                double speed = speeds[state["speed"]];
                double share = shares[state["share"]];
                double energy = 0.5 * mass * speed * speed;
                double rise = energy * share / 2 / (car.DiscMass.Kilograms * 460);
                Figure figure = new FigureBuilder("lesson-heat-curve", units, car.Vehicle)
                    .Title($"A stop from {Measure.Speed.Text(speed, units)} turns {Measure.Energy.Text(energy, units)} into heat")
                    .Describe($"Energy of one stop against the speed before it. {Invented}",
                        $"From {Measure.Speed.Text(speed, units)} the brakes take {Measure.Energy.Text(energy, units)}, "
                            + $"the front axle {Measure.Energy.Text(energy * share, units)} of it.")
                    .X("Speed before the stop", "v", Measure.Speed, 0, 45)
                    .Y("Energy", "W", Measure.Energy, 0, 0.5 * mass * 45 * 45)
                    .Line("all brakes", axis, axis.Select(v => 0.5 * mass * v * v).ToArray(), Tone.Main)
                    .Line("front axle", axis, axis.Select(v => share * 0.5 * mass * v * v).ToArray(), Tone.Front, Dash.Dash)
                    .Points("at the speed chosen", new double[] { speed, speed }, new double[] { energy, energy * share }, Tone.Main,
                        label: "")
                    .Build();
                double[] hot = [.. Enumerable.Range(0, 31).Select(n => Cold + (n * rise)).TakeWhile(at => at <= Cold + 700)];
                double[] counts = [.. Enumerable.Range(0, hot.Length).Select(n => (double)n)];
                int fading = (int)Math.Ceiling((Fading - Cold) / rise);
                Figure stops = new FigureBuilder("lesson-heat-stops", units, car.Vehicle)
                    .Title(fading > 30 ? "More than thirty such stops heat a front disc to where street pads fade"
                        : Invariant($"{(fading == 1 ? "One such stop heats" : $"{fading} such stops heat")} a front disc to where ")
                        + "street pads fade")
                    .Describe($"Temperature of a front disc after stops one upon the other, nothing lost to the air. {Invented}",
                        $"Each stop adds {Kelvins(rise, units)}; the disc begins at {Measure.Temperature.Text(Cold, units)}.")
                    .X("Stops, one upon the other", "", Measure.Count, 0, 30)
                    .Y("Temperature of a front disc", "", Measure.Temperature, Cold - 20, Cold + 700)
                    .Line("front disc", counts, hot, Tone.Front)
                    .Level("fading", Fading, Tone.Rear, label: "street pads fade (common practice)")
                    .Build();
                return new Frame([figure, stops],
                [
                    new("Energy", Measure.Energy.Text(energy, units)),
                    new("One front disc warms by", Kelvins(rise, units)),
                    new("Stops until street pads fade", fading > 30 ? "more than 30" : Invariant($"{fading}")),
                ]);
            });
    }
}
