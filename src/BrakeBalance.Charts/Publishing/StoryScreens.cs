using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Publishing;

/// <summary>Controls, sentences and figures of the story's screens.</summary>
internal sealed class StoryScreens(Vehicle vehicle, Func<Setting> answer, UnitSystem units, string id)
{
    private const int Dry = 2;

    private static readonly Speed From = Speed.FromKilometersPerHour(60);

    private readonly LoadCase _load = vehicle.LoadCases[0];

    private readonly IReadOnlyList<(string Name, string Where, double Adhesion)> _roads = Finding.NamedRoads(vehicle);

    private readonly ForceWindow _window = ForceWindow.Of(
        [.. vehicle.LoadCases.Select(load => new BalanceModel(vehicle, load))], vehicle.Conditions.TrackAdhesion);

    /// <summary>The car from the side: weight moves forward.</summary>
    public Explorable Stop()
    {
        var model = new BalanceModel(vehicle, _load);
        double[] rates = [.. Rates(model)];
        return Explorable.Of(id, [Braking(rates) with { PlaysItself = true }], state =>
        {
            double rate = rates[state["rate"]];
            PerAxle<Force> rest = model.StaticAxleLoads, now = model.NormalReactions(rate);
            (string front, string rear) = Shares(now.Front / model.Weight);
            string moved = Measure.Mass.Text(
                Mass.FromKilograms((now.Front - rest.Front).Newtons / Gravity.StandardMetresPerSecondSquared), units);
            return new Frame(
                [StoryFigures.Stop(model, rate, (front, rear), units, $"{id}-car",
                    rate > 0 ? $"Braking at {Finding.Rate(rate)} g, the front wheels carry {front} of the car"
                        : $"At rest the front wheels carry {front} of the car")],
                [],
                new Verdict(rate > 0
                    ? $"It is as if {moved} had moved from the rear wheels to the front wheels. The rear wheels have lost "
                        + $"{Percent(1 - (now.Rear / rest.Rear))} of their load, and grip goes with load."
                    : $"The rear wheels carry the other {rear}."));
        });
    }

    /// <summary>The car from above with one pair of wheels locked.</summary>
    public Explorable Above()
    {
        // Each pair is made to lock, so pedal, assist and the car's own highest pressure do not count.
        var setup = StopSetup.From(vehicle with { Control = null }, _load, _roads[Dry].Adhesion);
        YawResult[] stops = [.. new[] { Axle.Front, Axle.Rear }.Select(axle => YawStop.Run(
            YawStop.WithOnlyLocked(setup.Car, axle), Pressure.FromBars(100), setup.BuildUp, From, YawDisturbance.Crown))];
        string[] names = ["front wheels", "rear wheels"];
        double end = stops.Max(stop => stop.Duration.Seconds);
        double[] times = [.. Enumerable.Range(0, 41).Select(i => Math.Round(end * i / 40, 2))];
        int start = Array.FindIndex(times, time => time >= (stops[1].SquareToRoadAt?.Seconds ?? 0.6 * end));
        return Explorable.Of(
            id,
            [
                Control.Choice("locked", "Which wheels lock", names, 1),
                Control.Clock("time", times, 100, units) with { Start = start },
            ],
            state =>
            {
                int locked = state["locked"];
                double now = times[state["time"]];
                YawSample here = StopFigures.At(stops[locked], now);
                string name = $"{names[locked]} locked", other = Turned(StopFigures.At(stops[1 - locked], now));
                Figure plan = StopFigures.PlanView([(name, stops[locked])], vehicle.Wheelbase, now, units, $"{id}-plan", aspect: 0.3);
                return new Frame(
                    [plan with
                    {
                        Title = $"{Finding.Capital(name)}: after {Measure.Time.Text(now, units)} the car has turned by {Turned(here)} "
                            + $"and does {Measure.Speed.Text(here.SpeedMetresPerSecond, units)}",
                        Caption = $"{Name} from above, from {Measure.Speed.Text(From, units)} on a dry road that falls off to "
                            + "one side; the driver holds the wheel straight. The car is drawn large; the thick bar is the locked pair."
                            + (vehicle.Uncertainty is null ? "" : " " + FigureBuilder.Middles),
                        LongDescription = $"With its {name} the car comes to rest turned by {Turned(stops[locked].Trace[^1])}, after "
                            + $"{Measure.Distance.Text(stops[locked].Distance, units)}.",
                        YAxis = plan.YAxis with { Quantity = "Across the road" },
                    }],
                    [],
                    new Verdict($"With the {names[1 - locked]} locked instead, it would have turned by {other}.",
                        locked == 1 && stops[1].SwapsEnds ? VerdictKind.Caution : VerdictKind.Neutral));
            });
    }

    /// <summary>The perfect split: the curve and a point on it.</summary>
    public Explorable Split()
    {
        var model = new BalanceModel(Without(), _load);
        double[] rates = [.. Rates(model).Skip(2)];
        return Explorable.Of(id, [Braking(rates)], state =>
        {
            double rate = rates[state["rate"]];
            (string front, string rear) = Split(rate);
            PerAxle<Force> at = model.IdealForces(rate);
            double x = at.Front.Newtons, y = at.Rear.Newtons;
            FigureBuilder figure = Plane(model, _window,
                $"At {Finding.Rate(rate)} g the perfect split is {front} in front and {rear} at the rear",
                $"Braking by the rear wheels of {vehicle.InText} over braking by its front wheels. "
                    + "On the dashed curve all four wheels would lock together.", danger: false)
                .Line("front", [0, x], [y, y], Tone.Front, Dash.Solid, 3, $"front {front}", 0.4)
                .Line("rear", [x, x], [0, y], Tone.Rear, Dash.Solid, 3, $"rear {rear}", 0.3)
                .Points("now", [x], [y], label: $"{Finding.Rate(rate)}\u00a0g");
            return new Frame([figure.Build()], [], new Verdict(
                $"Split so, front and rear use the same part of their grip. But {front} in front is right at {Finding.Rate(rate)} g alone: "
                    + "at " + string.Join(", at ", new[] { rates[0], rates[^1] }.Where(end => end != rate)
                        .Select(end => $"{Finding.Rate(end)} g {Split(end).Front}")) + " belong there."));
        });

        (string Front, string Rear) Split(double rate)
        {
            PerAxle<Force> at = model.IdealForces(rate);
            return Shares(at.Front / Force.FromNewtons(Math.Max(1e-9, at.Front.Newtons + at.Rear.Newtons)));
        }
    }

    /// <summary>The car with every valve taken out.</summary>
    public Explorable Straight()
    {
        var model = new BalanceModel(Without(), _load);
        (double right, double top) = _window.Rounded();
        BalancePoint[] crossings = [.. model.IdealCrossings()
            .Where(at => at.BrakingForces.Front.Newtons <= right && at.BrakingForces.Rear.Newtons <= top)];
        string meets = crossings.Length > 0
            ? $"The line crosses the curve at {string.Join(" and at ", crossings.Select(at => Finding.Rate(at.BrakingRate) + " g"))}."
            : "The line does not cross the curve in this picture.";
        return Explorable.Of(id, [Road()], state =>
        {
            (_, string where, double adhesion) = _roads[state["road"]];
            LockUp? lockUp = model.FirstLockUp(adhesion);
            FigureBuilder figure = Plane(model, _window, Finding.Capital($"{where} {KneeStory.Words(lockUp)}"),
                $"{Name} {(Valves.Any() ? "with every valve taken out" : "as it is: it has no valves")}.{Ring(lockUp)}")
                .Installed(model, _window, "this car");
            if (crossings.Length > 0)
            {
                figure.Points("crosses", crossings.Select(at => at.BrakingForces.Front).ToArray(),
                    crossings.Select(at => at.BrakingForces.Rear).ToArray(), Tone.Ideal, Marker.Diamond, label: "");
            }

            return new Frame([figure.Mark(lockUp, StoryFigures.Forces).Build()], [], Said(lockUp, meets + (lockUp is null ? ""
                : " Where the first wheels lock, the line is "
                    + $"{lockUp.First switch { Axle.Rear => "above", Axle.Front => "below", _ => "on" }} the curve.")));
        });
    }

    /// <summary>The knee alone: no other valve.</summary>
    public Explorable Knee()
    {
        Setting setting = answer();
        (IReadOnlyList<Pressure> knees, int own) = KneeStory.Knees(setting, units);
        (IReadOnlyList<double> slopes, int ownSlope) = KneeStory.SlopesOf(setting);
        double slope = slopes[ownSlope];
        var straight = new BalanceModel(Without(), _load);
        (_, string where, double adhesion) = _roads[Dry];
        string open = KneeStory.Words(straight.FirstLockUp(adhesion));
        bool fitted = vehicle.Hydraulics.RearProportioningValve is not null;
        bool more = Valves.Any(valve => valve != vehicle.Hydraulics.RearProportioningValve);
        return Explorable.Of(id, [Control.Slider("knee", "Knee", SettingChoices.Texts(knees, units), own)], state =>
        {
            Pressure knee = knees[state["knee"]];
            var model = new BalanceModel(Without(new ProportioningValve { Knee = knee, Slope = slope }), _load);
            LockUp? lockUp = model.FirstLockUp(adhesion);
            Pressure held = lockUp is null ? Pressure.Zero : KneeStory.HeldBack(model, straight, lockUp.At);
            Figure figure = Plane(model, _window, $"Knee at {SettingWords.Knee(knee, units)}: {where} {KneeStory.Words(lockUp)}",
                $"{Name} with {(fitted ? "its" : "such a")} valve in the rear line{(fitted ? "" : ", which it does not have")}"
                    + $"{(more ? "; every other valve is taken out" : "")}.{Ring(lockUp)}")
                .Installed(straight, _window, "without the valve", Tone.Guide, Dash.Dot, 1.6)
                .Installed(model, _window, "with the valve")
                .Bend(model, slope, StoryFigures.Forces, _window.Rounded()).Mark(lockUp, StoryFigures.Forces).Build();
            return new Frame([figure], [], Said(lockUp,
                (lockUp is null ? "" : held > Pressure.Zero
                    ? $"When the first wheels lock, the valve holds {Text(held)} back. "
                    : "When the first wheels lock, the valve holds nothing back. ")
                + $"Above the knee it lets {StoryFigures.Passed(slope)} through. Without the valve {open}."));
        });
    }

    /// <summary>The metering valve: who begins.</summary>
    public Explorable Metering()
    {
        BrakeHydraulics open = vehicle.Hydraulics with
        {
            FrontValves = [.. vehicle.Hydraulics.FrontValves.Where(valve => valve is not MeteringValve)],
        };
        BalanceModel with = new(vehicle, _load), without = new(vehicle with { Hydraulics = open }, _load);
        MeteringValve? valve = vehicle.Hydraulics.FrontValves.OfType<MeteringValve>().FirstOrDefault();
        DisplayUnit unit = Measure.LinePressure.In(units);
        double most = Math.Min(1.3 * (valve?.BlendPressure.Pascals ?? 20e5), with.MaximumPressure.Pascals);
        double step = Ticks.Step(unit.FromSi(most), 30);
        double[] pressures = [.. Enumerable.Range(1, 40).Select(i => unit.ToSi(i * step)).Where(pascals => pascals <= most)];
        (_, string where, double adhesion) = _roads[0];
        LockUp? now = with.FirstLockUp(adhesion), then = without.FirstLockUp(adhesion);
        int start = Math.Max(0, Array.FindLastIndex(pressures, pascals => with.StateAt(pascals).FrontLinePascals <= 0));
        BalancePoint[] ends = [with.At(Pressure.FromPascals(pressures[^1])), .. now is null ? [] : new[] { now.At }];
        ForceWindow window = new(1.1 * ends.Max(at => at.BrakingForces.Front), 1.6 * ends.Max(at => at.BrakingForces.Rear));
        var control = Control.Slider("pressure", "Pressure from the foot", Measure.LinePressure, pressures, start, units);
        return Explorable.Of(id, [control], state =>
        {
            BalancePoint at = with.At(Pressure.FromPascals(pressures[state["pressure"]]));
            Pressure front = at.LinePressures.Front, all = without.At(at.MasterPressure).LinePressures.Front;
            string whole = Text(all);
            string gets = front <= Pressure.Zero ? "nothing" : all - front > Pressure.FromPascals(1) ? Text(front) : "everything";
            Figure figure = Plane(with, window, valve is null ? $"{Name} has no metering valve"
                    : $"Of {whole} the metering valve lets {gets} through to the front",
                $"{Name} as it is{(valve is null ? "" : ", with its metering valve")}. The lower left of the picture, enlarged."
                    + (now is null ? "" : $" The ring is the moment at which the first wheels lock {where}."))
                .Installed(without, window, "without the metering valve", Tone.Guide, Dash.Dot, 1.6)
                .Installed(with, window, "this car")
                .Points("now", [at.BrakingForces.Front.Newtons], [at.BrakingForces.Rear.Newtons], label: $"at {whole}")
                .Mark(now, StoryFigures.Forces).Build();
            double share = at.BrakingForces.Rear / (at.BrakingForces.Front + at.BrakingForces.Rear);
            return new Frame([figure], [], new Verdict(
                (double.IsFinite(share) ? $"The rear brakes do {Percent(share)} of the braking now. " : "No brake has taken hold yet. ")
                    + Finding.Capital(where) + $" {KneeStory.Words(now)}"
                    + (valve is null ? "." : $"; without the metering valve {KneeStory.Words(then)}."),
                now?.First == Axle.Rear ? VerdictKind.Caution : VerdictKind.Neutral));
        });
    }

    /// <summary>The whole car with all controls.</summary>
    public Explorable All()
    {
        Setting setting = answer();
        (IReadOnlyList<Pressure> knees, int own) = KneeStory.Knees(setting, units);
        (IReadOnlyList<double> slopes, int ownSlope) = KneeStory.SlopesOf(setting);
        Control[] controls =
        [
            Control.Slider("knee", "Knee", SettingChoices.Texts(knees, units), own),
            Control.Slider("slope", "Share above the knee", slopes.Select(SlopeName), ownSlope),
            Control.Choice("load", "Load", vehicle.LoadCases.Select(load => PlainText.Load(load.Name)), 0),
            Road(),
        ];
        Pressure top = (from load in vehicle.LoadCases
                        from knee in knees
                        from slope in slopes
                        let model = new BalanceModel(vehicle.WithRearKnee(knee, slope), load)
                        let at = model.FirstLockUp(_roads[^1].Adhesion)?.At ?? model.At(model.MaximumPressure)
                        select UnitMath.Max(at.LinePressures.Front, at.LinePressures.Rear)).Max();
        return Explorable.Of(id, controls, state =>
        {
            (Pressure knee, double slope) = (knees[state["knee"]], slopes[state["slope"]]);
            var model = new BalanceModel(vehicle.WithRearKnee(knee, slope), vehicle.LoadCases[state["load"]]);
            (_, string where, double adhesion) = _roads[state["road"]];
            LockUp? lockUp = model.FirstLockUp(adhesion);
            string side = lockUp?.First switch { Axle.Rear => "on the wrong side of", Axle.Front => "on the safe side of", _ => "on" };
            Figure plane = Plane(model, _window, lockUp is null ? "No wheel locks here"
                    : $"At the limit of this road the line is {side} the curve: {KneeStory.Words(lockUp)}",
                $"{Name}{(vehicle.Hydraulics.RearProportioningValve is null ? ", such a valve added," : "")} {where}, whose grip is "
                    + $"{Finding.Rate(adhesion)} of the weight.{Ring(lockUp)}")
                .Installed(model, _window, "this car")
                .Bend(model, slope, StoryFigures.Forces, _window.Rounded()).Mark(lockUp, StoryFigures.Forces).Build();
            return new Frame(
                [
                    plane, StoryFigures.Valve(model, lockUp, knee, slope, top, units, $"{id}-valve"),
                    StoryFigures.Wheels(model, lockUp, units, $"{id}-wheels"),
                ],
                [
                    new Readout("Locks first", lockUp is null
                        ? "no wheel" : lockUp.First switch { Axle.Front => "front wheels", Axle.Rear => "rear wheels", _ => "all wheels" }),
                    new Readout("When braking at", lockUp is null ? "–" : $"{Finding.Rate(lockUp.At.BrakingRate)} g"),
                    new Readout("Grip of the road used", lockUp is null ? "–" : Percent(lockUp.Efficiency)),
                ],
                StoryFigures.Verdict(lockUp));
        });
    }

    private string Name => Finding.Capital(vehicle.InText);

    private IEnumerable<PressureValve> Valves => vehicle.Hydraulics.FrontValves.Concat(vehicle.Hydraulics.RearValves);

    /// <summary>The car with no valves in its lines but those given, in the rear line.</summary>
    private Vehicle Without(params ReadOnlySpan<PressureValve> but) =>
        vehicle with { Hydraulics = vehicle.Hydraulics with { FrontValves = [], RearValves = [.. but] } };

    private FigureBuilder Plane(BalanceModel model, ForceWindow window, string title, string caption, bool danger = true) =>
        StoryFigures.Plane(model, window, units, $"{id}-plane", danger).Title(title).Describe(caption, $"{title}. {caption}");

    private static Control Braking(double[] rates)
    {
        IEnumerable<string> texts = rates.Select(rate => $"{Finding.Rate(rate)} g");
        return Control.Slider("rate", "How hard it brakes", texts, Math.Min(12, rates.Length - 1)) with { FrameMilliseconds = 120 };
    }

    private Control Road() => Control.Slider("road", "Road", _roads.Select(road => road.Name), Dry);

    /// <summary>Decelerations up to 1 g, or to shortly before the rear wheels leave the road.</summary>
    private static IEnumerable<double> Rates(BalanceModel model) =>
        Enumerable.Range(0, 21).Select(i => Math.Round(i * Math.Min(1, 0.95 * model.RearLiftOffRate) / 20, 2));

    /// <summary>Front and rear share of a whole as shown: together 100 %.</summary>
    private (string Front, string Rear) Shares(double front) => (Percent(front), Percent(1 - Math.Round(front, 2)));

    private string Percent(double fraction) => Measure.Percent.Text(fraction, units);

    private string Text(Pressure pressure) => Measure.LinePressure.Text(pressure, units);

    private static string Turned(YawSample sample) => Invariant.Text($"{Math.Abs(sample.HeadingRadians) * 180 / Math.PI:0}°");

    private static string Ring(LockUp? lockUp) => lockUp is null ? "" : " The ring is the moment at which the first wheels lock.";

    private static Verdict Said(LockUp? lockUp, string more) => lockUp?.First switch
    {
        _ when lockUp is null => new($"The pressure does not go high enough to lock a wheel. {more}"),
        Axle.Rear => new($"Danger: the car can spin. {more}", VerdictKind.Caution),
        Axle.Front => new($"The car slides straight on and cannot steer, but it does not spin. {more}", VerdictKind.Good),
        _ => new($"Nothing is left in hand. {more}", VerdictKind.Caution),
    };

    private static string SlopeName(double slope) => slope switch
    {
        0 => "nothing",
        1 => "all of it (no valve)",
        _ => Invariant.Text($"{100 * slope:0} %"),
    };
}
