using BrakeBalance.Charts.Exploring;
using static System.FormattableString;

namespace BrakeBalance.Charts.Lessons;

internal static partial class LessonFigures
{
    private static Explorable Utilisation(ExerciseCar car, UnitSystem units)
    {
        double[] shares = [.. Enumerable.Range(0, 13).Select(i => 0.14 + 0.02 * i)];
        double[] rates = Rates[2..20];
        double own = car.RearForceShare;
        int start = shares.Index().MinBy(pair => Math.Abs(pair.Item - own)).Index;
        return Explorable.Of(
            "lesson-utilisation",
            [Control.Slider("share", "Rear share of the braking force", Measure.Percent, shares, start, units),
                Control.Slider("rate", "Deceleration", Measure.InG, rates, 10, units)],
            state =>
            {
                double share = shares[state["share"]];
                double rate = rates[state["rate"]];
                double weight = car.Balance.Weight.Newtons;
                double Front(double z) => (1 - share) * z * weight / car.Balance.NormalReactions(z).Front.Newtons;
                double Rear(double z) => share * z * weight / car.Balance.NormalReactions(z).Rear.Newtons;
                bool frontLeads = Front(rate) >= Rear(rate);
                Figure figure = new FigureBuilder("lesson-utilisation-curves", units)
                    .Title(Invariant($"At a deceleration of {rate:0.00} g the {(frontLeads ? "front" : "rear")} axle ")
                        + "uses more of the road")
                    .Describe($"Adhesion utilised by both axles against deceleration. {Invented}",
                        "Two curves around the diagonal k = z: front above it where it leads, rear above it where it leads.",
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
                    new("Front uses", Measure.Number.Text(Front(rate), units)),
                    new("Rear uses", Measure.Number.Text(Rear(rate), units)),
                    new("Road needed", Measure.Number.Text(Math.Max(Front(rate), Rear(rate)), units)),
                ],
                frontLeads ? new Verdict("The front axle would lock first here.", VerdictKind.Good)
                    : new Verdict("The rear axle would lock first here: the car can spin.", VerdictKind.Caution));
            });
    }

    private static Explorable Effort(ExerciseCar car, UnitSystem units)
    {
        double[] vacuums = [.. Enumerable.Range(0, 8).Select(i => i * 1e4)];
        double[] ratios = [3.0, 4.0, 5.0, 6.0];
        double[] bores = [0.019, 0.021, 0.023, 0.025];
        double[] pedals = [.. Enumerable.Range(0, 21).Select(i => i * 25.0)];
        return Explorable.Of(
            "lesson-effort",
            [
                Control.Slider("vacuum", "Vacuum in the booster", Measure.Vacuum, vacuums, 6, units),
                Control.Slider("ratio", "Pedal ratio", Measure.Number, ratios, 1, units),
                Control.Slider("bore", "Bore of the master cylinder", Measure.Travel, bores, 2, units),
            ],
            state =>
            {
                Area bore = Area.FromCircleDiameter(Length.FromMeters(bores[state["bore"]]));
                Pedal pedal = car.Pedal with { Lever = new FixedRatioLever { Ratio = ratios[state["ratio"]] } };
                VacuumBooster booster = car.Booster with
                {
                    Supply = new VacuumSupply
                    {
                        Vacuum = Pressure.FromPascals(
                    vacuums[state["vacuum"]])
                    }
                };
                double Bare(double newtons) => (pedal.InputRodForce(Force.FromNewtons(newtons)) / bore).Pascals;
                double Assisted(double newtons) => (booster.OutputForce(pedal.InputRodForce(Force.FromNewtons(newtons))) / bore).Pascals;
                FigureBuilder figure = new FigureBuilder("lesson-effort-curves", units)
                    .Title(booster.RunOut is { } at
                        ? $"The booster runs out at a pedal force of {Measure.ControlForce.Text(pedal.PedalForce(at.InputForce), units)}"
                        : "Without vacuum the booster gives nothing")
                    .Describe($"Line pressure against pedal force with and without assist, no losses. {Invented}",
                        "Two lines from the origin: the assisted one is steeper up to the run-out, then parallel to the bare one.",
                        $"At 300 N the line pressure is {Measure.LinePressure.Text(Assisted(300), units)} "
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
                    new("At 300 N (67 lbf), assisted", Measure.LinePressure.Text(Assisted(300), units)),
                    new("At 300 N (67 lbf), bare", Measure.LinePressure.Text(Bare(300), units)),
                    new("Greatest assist", Measure.ControlForce.Text(booster.MaximumAssist, units)),
                ]);
            });
    }

    private static Explorable FailedAssist(ExerciseCar car, UnitSystem units)
    {
        double[] ratios = [3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 6.5];
        double[] bores = [0.017, 0.019, 0.021, 0.023, 0.025, 0.027];
        double[] pedals = [.. Enumerable.Range(1, 32).Select(i => i * 25.0)];
        BalanceModel model = car.Balance;
        return Explorable.Of(
            "lesson-failed-assist",
            [Control.Slider("ratio", "Pedal ratio", Measure.Number, ratios, 2, units),
                Control.Slider("bore", "Bore of the master cylinder", Measure.Travel, bores, 3, units)],
            state =>
            {
                Area bore = Area.FromCircleDiameter(Length.FromMeters(bores[state["bore"]]));
                Pedal pedal = car.Pedal with { Lever = new FixedRatioLever { Ratio = ratios[state["ratio"]] } };
                double Rate(double newtons) =>
                    model.StateAt(Math.Min(model.MaximumPressure.Pascals,
                    (pedal.InputRodForce(Force.FromNewtons(newtons)) / bore).Pascals)).BrakingRate;
                double at500 = Rate(500);
                Figure figure = new FigureBuilder("lesson-failed-assist-curve", units)
                    .Title(Invariant($"With 500 N and no assist the brakes ask for a deceleration of {at500:0.00} g"))
                    .Describe($"Deceleration the brakes ask for against pedal force, assist gone, no losses. {Invented}",
                        "A rising line that bends at the valve's knee; a mark at 500 N.",
                        Invariant($"At 500 N the brakes ask for {at500:0.00}; the tyres may give less."))
                    .X("Pedal force", "F", Measure.ControlForce, 0, 800)
                    .Y("Deceleration asked for", "z", Measure.InG, 0, 1.2)
                    .Line("no assist", pedals, pedals.Select(Rate).ToArray(), Tone.Other)
                    .Upright("500 N", 500, label: "500 N (112 lbf)")
                    .Level("failed-assist rule", 0.249, label: "about what a stop from 100 km/h in 168 m needs")
                    .Points("at 500 N", new double[] { 500 }, new double[] { at500 }, Tone.Main, label: "")
                    .Build();
                return new Frame([figure],
                [
                    new("Deceleration at 500 N", Measure.Number.Text(at500, units)),
                    new("Deceleration at 250 N", Measure.Number.Text(Rate(250), units)),
                ]);
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
                string words = lockUp is null
                    ? "no axle locks" : lockUp.First switch
                    {
                        Axle.Front =>
                    "the front axle locks first",
                        Axle.Rear => "the rear axle locks first",
                        _ => "both axles lock together"
                    };
                FigureBuilder figure = new FigureBuilder("lesson-rear-lock-plane", units)
                    .Title(Invariant($"On an adhesion of {adhesion:0.0}, {set[state["valve"]]}: {words}"))
                    .Describe($"Rear against front braking force with both locking limits. {Invented}",
                        "The installed line runs from the origin until it meets the front or the rear locking limit.",
                        lockUp is null ? "No limit is met within the pressure considered."
                            : Invariant($"The limit is met at a deceleration of {lockUp.At.BrakingRate:0.00} g."))
                    .X("Front braking force", "T₁", Measure.BrakeForce, 0, weight)
                    .Y("Rear braking force", "T₂", Measure.BrakeForce, 0, 0.45 * weight)
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
                    new("Locks first", lockUp is null
                        ? "no axle" : lockUp.First switch { Axle.Front => "front axle", Axle.Rear => "rear axle", _ => "both axles" }),
                    new("At a deceleration of", lockUp is null ? "–" : Measure.InG.Text(lockUp.At.BrakingRate, units)),
                    new("Braking efficiency", lockUp is null ? "–" : Measure.Percent.Text(lockUp.Efficiency, units)),
                ],
                lockUp?.First == Axle.Rear
                    ? new Verdict("Rear first: the car can spin before the driver can react.", VerdictKind.Caution)
                    : new Verdict("Front first: the car runs straight on, unsteered.", VerdictKind.Good));
            });
    }

    private static Explorable Heat(ExerciseCar car, UnitSystem units)
    {
        double[] speeds = [.. Enumerable.Range(2, 15).Select(i => i * 10 / 3.6)];
        double[] shares = [0.6, 0.65, 0.7, 0.75, 0.8];
        double[] axis = [.. Enumerable.Range(0, 46).Select(i => i)];
        double mass = car.LoadCase.Mass.Kilograms;
        return Explorable.Of(
            "lesson-heat",
            [Control.Slider("speed", "Speed before the stop", Measure.Speed, speeds, 8, units),
                Control.Slider("share", "Front axle's share", Measure.Percent, shares, 2, units)],
            state =>
            {
                double speed = speeds[state["speed"]];
                double share = shares[state["share"]];
                double energy = 0.5 * mass * speed * speed;
                double rise = energy * share / 2 / (car.DiscMass.Kilograms * 460);
                Figure figure = new FigureBuilder("lesson-heat-curve", units)
                    .Title($"A stop from {Measure.Speed.Text(speed, units)} turns {Measure.Energy.Text(energy, units)} into heat")
                    .Describe($"Energy of one stop against the speed before it. {Invented}",
                        "A curve that rises with the square of the speed: twice the speed, four times the heat.",
                        $"From {Measure.Speed.Text(speed, units)} the brakes take {Measure.Energy.Text(energy, units)}, "
                            + $"the front axle {Measure.Energy.Text(energy * share, units)} of it.")
                    .X("Speed before the stop", "v", Measure.Speed, 0, 45)
                    .Y("Energy", "W", Measure.Energy, 0, 0.5 * mass * 45 * 45)
                    .Line("all brakes", axis, axis.Select(v => 0.5 * mass * v * v).ToArray(), Tone.Main)
                    .Line("front axle", axis, axis.Select(v => share * 0.5 * mass * v * v).ToArray(), Tone.Front, Dash.Dash)
                    .Points("at the speed chosen", new double[] { speed, speed }, new double[] { energy, energy * share }, Tone.Main,
                        label: "")
                    .Build();
                return new Frame([figure],
                [
                    new("Energy", Measure.Energy.Text(energy, units)),
                    new("One front disc warms by", units == UnitSystem.Us ? Invariant($"{rise * 1.8:0} °F") : Invariant($"{rise:0} °C")),
                ]);
            });
    }
}
