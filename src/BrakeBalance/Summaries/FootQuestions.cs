using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Vehicles;
using static BrakeBalance.Summaries.DeskCar;

namespace BrakeBalance.Summaries;

/// <summary>The questions on booster, effort, master cylinder and pedal. Which need a control in the file, the desk knows.</summary>
internal sealed class FootQuestions(DeskCar desk)
{
    private const string NoBooster = "No booster is fitted";
    private const string PumpEntries = "assist of type hydraulic with reliefPressure and pumpFlow: load gauge with shut-off valve "
        + "(seconds only) and flow meter at idle";

    // Common practice: wanted at idle; below the first a reservoir or pump helps, below the second another kind of booster.
    private static readonly Pressure LittleVacuum = Pressure.FromInchesOfMercury(14);
    private static readonly Pressure HardlyAnyVacuum = Pressure.FromInchesOfMercury(10);

    private BrakeControl? Control => desk.Car.Control;

    private string Alone => $"with the leg alone a deceleration of {G(Firm)} takes {desk.Effort(desk.Bare!, Firm)}";

    public Reply Vacuum()
    {
        if (Control is null)
        {
            return Reply.Lacks(Reply.Control, "assist.vacuum: vacuum gauge at the booster's hose, hot, in gear, lowest of ten stops "
                + "and goes");
        }

        if (desk.Booster is not VacuumBooster booster)
        {
            return desk.Booster is null ? $"{NoBooster}, so vacuum does not matter: {Alone}."
                : $"It does not matter: a pump feeds the booster. Without it, {Alone}.";
        }

        Pressure vacuum = booster.Supply.Vacuum;
        string verdict = vacuum < HardlyAnyVacuum ? "another kind of booster, or none, is usual with so little"
            : vacuum < LittleVacuum ? "a reservoir or a vacuum pump is usual with so little"
            : "that is usual for a vacuum booster";
        return $"With {Answers.Measure.Vacuum.Text(vacuum, desk.Units)} the assist {RunsOut()}; "
            + $"{verdict} (common practice). Beyond it all further force is the driver's own: {Alone}.";
    }

    public Reply Solid()
    {
        ControlForce bare = Unassisted(desk.Laden!);
        Force limit = desk.Targets.GreatestPedalForce;
        bool solid = bare.AtRate(Firm) is not { } point || point.PedalForce > limit;
        return $"Without assist a deceleration of {G(Firm)}{desk.WhenLaden} takes {desk.Effort(bare, Firm)}; a comfortable push is at most "
            + $"{desk.Push(limit)} "
            + (solid
                ? "(common practice), so the pedal is hard. A smaller bore or a higher pedal ratio lowers it, and lengthens the pedal."
                : "(common practice), so by this file the pedal is not too hard: if it is on the car, look for seized pistons or "
                    + "glazed pads.");
    }

    public Reply Pump()
    {
        if (desk.Booster is HydraulicBooster booster)
        {
            return $"At a relief pressure of {desk.Line(booster.ReliefPressure)} the assist {RunsOut()}; "
                + $"the pump's flow of {desk.Flow(booster.PumpFlow)} is shared with the steering.";
        }

        return Control is { Assist: NoAssist } ? $"{NoBooster}: {Alone}. For a pump-fed one, measure the pump's relief pressure and "
            + $"flow first."
            : Reply.Lacks(PumpEntries);
    }

    public Reply Ratio()
    {
        BrakeControl control = Control!;
        double own = control.Pedal.Lever.RatioAt(Length.Zero);
        string At(double ratio)
        {
            BrakeControl changed = control with { Pedal = control.Pedal with { Lever = new FixedRatioLever { Ratio = ratio } } };
            string bare = desk.Effort(desk.With(changed with { Assist = control.Assist.WithoutEnergy() }), Firm);
            string alone = desk.Booster is null ? "" : $" ({bare} without the booster)";
            return $"{(desk.Booster is null ? bare : desk.Effort(desk.With(changed), Firm))}{alone}{Say($" at {ratio:0.0} : 1")}";
        }

        double lower = own > 4.25 ? 4 : Math.Max(1, Math.Floor(own - 0.5));
        double[] others = [.. new[] { lower, 6 }.Where(ratio => Math.Abs(ratio - own) > 0.25)];
        return $"A deceleration of {G(Firm)} takes {string.Join(", ", others.Prepend(own).Select(At))}. The pedal's travel goes the "
            + $"other way, with the "
            + $"ratio: {string.Join(" and ", others.Select(ratio => Say($"{ratio / own:0.0} times")))} the present one.";
    }

    public Reply Touchy()
    {
        ControlForce foot = desk.Foot!;
        ControlTargets targets = desk.Targets;
        string efforts = $"A deceleration of 0.3 g takes {desk.Effort(foot, 0.3)}, {G(Firm)} {desk.Effort(foot, Firm)}, "
            + $"{G(targets.BrakingRate)} {desk.Effort(foot, targets.BrakingRate)}. ";
        Force? hard = foot.AtRate(targets.BrakingRate)?.PedalForce;
        string verdict = hard is null ? "That is not touchy."
            : hard < targets.LeastPedalForce
                ? $"That is touchy: less than {desk.Push(targets.LeastPedalForce)} for {G(targets.BrakingRate)} (common practice). A "
                    + $"bigger bore"
                    + (desk.Booster is null ? " or a lower pedal ratio calms it." : ", a lower pedal ratio or less boost calms it.")
            : hard > targets.GreatestPedalForce
                ? $"That is hard, not touchy: more than {desk.Push(targets.GreatestPedalForce)} for {G(targets.BrakingRate)} "
                    + $"(common practice)."
            : $"That is neither touchy nor hard: {desk.Push(targets.LeastPedalForce)} to {desk.Push(targets.GreatestPedalForce)} for "
                + $"{G(targets.BrakingRate)} are usual (common practice).";
        return efforts + verdict + JumpIn(foot);
    }

    public Reply Steering()
    {
        if (desk.Booster is not HydraulicBooster booster)
        {
            return Control is null ? Reply.Lacks(Reply.Control, PumpEntries)
                : $"Not by the brakes: {(desk.Booster is null ? "no booster is fitted" : "the booster runs on vacuum")}, so they take "
                    + $"no oil from the steering pump. For {G(Firm)} the foot gives {desk.Effort(desk.Foot!, Firm)}.";
        }

        if (booster.SteeringFlow <= VolumeFlow.Zero)
        {
            return Reply.Lacks("assist.steeringFlow: flow meter at idle with the wheel turned; return layout and fluid by eye");
        }

        string quick = desk.Foot!.AtRate(desk.Targets.BrakingRate) is { } point
            && desk.Foot.TravelAt(point.Balance.MasterPressure) is { } travel
            && booster.ShortestApplication(travel.RodTravel) is { } time
                ? $" A stop of {G(desk.Targets.BrakingRate)} built up in less than {Answers.Measure.Time.Text(time, desk.Units)} asks "
                    + $"for more."
                : "";
        return $"The pump gives {desk.Flow(booster.PumpFlow)}, of which the steering takes {desk.Flow(booster.SteeringFlow)}: "
            + $"{desk.Flow(booster.PumpFlow - booster.SteeringFlow)} are left for the booster.{quick} Back-pressure in the return is "
            + $"{desk.LowLine(booster.ReturnBackPressure)}. Where the assist runs out the pump blows off, and the steering gets "
            + $"nothing: here it {RunsOut()}.";
    }

    public Reply Reserve()
    {
        EngineOffPresses presses = EngineOffPresses.Of(desk.Laden!);
        string spent = $"a deceleration of {G(presses.BrakingRate)}{desk.WhenLaden} takes "
            + desk.Effort(Unassisted(desk.Laden!), presses.BrakingRate);
        if (desk.Booster is null)
        {
            return $"There is no assist to lose: {spent}.";
        }

        if (presses.NeedsNoAssist)
        {
            return $"Any number: with the store spent {spent}, no more than {desk.Push(presses.GreatestPedalForce)}.";
        }

        if (desk.Booster is HydraulicBooster { Accumulator: null })
        {
            return Reply.Lacks($"assist.accumulator: gas volume and precharge from its label, or count the presses; without one {spent}");
        }

        if (!presses.IsDescribed)
        {
            return Reply.Lacks($"assist.vacuumChamber and assist.applyChamber: volume of the booster's chambers; with the store "
                + $"spent {spent}");
        }

        int count = presses.Count ?? 0;
        string counted = count == 0 ? "No press stays within"
            : (count == 1 ? "1 press takes" : $"{count} presses in a row take") + " no more than";
        return $"{counted} {desk.Push(presses.GreatestPedalForce)} at a deceleration of "
            + $"{G(presses.BrakingRate)}{(count < 2 ? "" : " each")}{desk.WhenLaden}; with the store spent {spent}. Count them on the "
            + "car, engine off.";
    }

    public Reply Small()
    {
        if (desk.Booster is not { } booster)
        {
            return $"{NoBooster}: {Alone}.";
        }

        double? end = desk.Laden!.RunOut()?.Balance.BrakingRate;
        bool small = end < Firm || booster.RunOut is null;
        return $"At its most the booster adds {desk.Push(booster.MaximumAssist)}; it {RunsOut(desk.Laden)}. "
            + (small ? $"That is below {G(Firm)}: too small for the car, its cylinder or its supply." : $"That is not below {G(Firm)}: "
            + $"big enough for a firm stop.");
    }

    public Reply Bore()
    {
        if (Control?.Circuits is null
            || ControlSummary.Of(desk.Car, loadCase: desk.Car.LoadCases[0].Name) is not { Choices: { Count: > 0 } choices })
        {
            return Control is null ? Reply.Lacks(Reply.Control, Reply.Fluid) : Reply.Lacks(Reply.Fluid);
        }

        ControlTargets targets = desk.Targets;
        string wanted = $"Wanted in {desk.Car.LoadCases[0].Name}: {G(targets.BrakingRate)} with {desk.Push(targets.LeastPedalForce)} to "
            + $"{desk.Push(targets.GreatestPedalForce)} and {desk.Travel(targets.LeastTravelLeft)} of pedal left, "
            + $"{G(targets.FailSafeRate)} without assist with at most {desk.Push(targets.GreatestFailSafeForce)} (common practice). ";
        ControlChoiceResult[] fits = [.. choices.Where(choice => choice.Fits)];
        if (fits.Length == 0)
        {
            (string What, int Count)[] misses =
            [
                ("too hard", choices.Count(c => c.TooHard)),
                ("touchy", choices.Count(c => c.TooLight)),
                ("too long", choices.Count(c => c.TooLong)),
                ("too hard without assist", choices.Count(c => c.TooHardWithoutAssist)),
            ];
            string why = string.Join(", ", misses.Where(miss => miss.Count > 0).Select(miss => $"{miss.What} with {miss.Count}"));
            return $"{wanted}None of the {choices.Count} pairs of bore and pedal ratio around the present one fits: {why}.";
        }

        string pairs = string.Join("; ", fits.GroupBy(fit => fit.Bore).OrderBy(bore => bore.Key).Select((bore, i) =>
            $"{desk.Bore(bore.Key)} {(i > 0 ? "with" : bore.Count() == 1 ? "goes with the pedal ratio" : "goes with pedal ratios")} "
                + string.Join(" and ", Runs([.. bore.Select(fit => fit.PedalRatio).Order()]))));
        string which = desk.Bar is null ? "" : " (front cylinder, the rear one in step)";
        return $"{wanted}{fits.Length} of {choices.Count} pairs of bore{which} and pedal ratio fit. A bore of {pairs}.";
    }

    public Reply Ceiling()
    {
        ControlForce foot = desk.Foot!;
        string At(Force push)
        {
            ControlForcePoint at = foot.At(push);
            return $"{desk.Push(push)} make {desk.Line(at.OutletPressures.Front)} in front and {desk.Line(at.OutletPressures.Rear)} at the "
                + $"rear where they leave the cylinder, {desk.Line(at.Balance.LinePressures.Rear)} at the rear brakes. ";
        }

        Force firm = desk.Round(300, 75);
        string bar = desk.Bar is { } split
            ? $"A sum that forgets the bar would say {desk.Line(foot.At(firm).OutletPressures.Front / split.FrontForceShare)} in front for "
                + $"{desk.Push(firm)}: each cylinder sees only its share of the rod force. "
            : "";
        string highest = foot.PedalForceForPressure(desk.Highest) is { } force
            ? $"The {desk.Line(desk.Highest)} of hydraulics.maximumPressure takes {desk.Push(force)}. "
            : $"The pedal's linkage ends before the {desk.Line(desk.Highest)} of hydraulics.maximumPressure. ";
        return At(firm) + At(desk.Round(500, 112)) + bar + highest + "Compare with the lowest rating of caliper, hose and fitting.";
    }

    public Reply LongPedal()
    {
        if (Control?.Circuits is null)
        {
            return Control is null ? Reply.Lacks(Reply.Control, Reply.Fluid) : Reply.Lacks(Reply.Fluid);
        }

        double rate = desk.Targets.BrakingRate;
        if (desk.Foot!.AtRate(rate) is not { } point)
        {
            return $"A deceleration of {G(rate)} takes {desk.Effort(desk.Foot, rate)}, so its travel cannot be told.";
        }

        if (desk.Foot.TravelAt(point.Balance.MasterPressure) is not { } travel)
        {
            return $"At the {desk.Line(point.Balance.MasterPressure)} of {G(rate)} the hoses are beyond the table of their expansion.";
        }

        if (!travel.Reaches)
        {
            return $"A deceleration of {G(rate)} is not reached: {travel.Warning}";
        }

        string parts = string.Join(", ", travel.Parts.OrderByDescending(part => part.Travel).Take(3)
            .Select(part => $"{part.Name} ({desk.Travel(part.Travel)})"));
        return $"At a deceleration of {G(rate)} the pedal goes {desk.Travel(travel.Pad!.Value)}, mostly through {parts}; "
            + $"{desk.Travel(travel.PadLeft!.Value)} are left to the floor, {desk.Travel(PedalTravel.WantedReserve)} are wanted "
            + "(common practice). Adjust and bleed before blaming the cylinder.";
    }

    public Reply Drag()
    {
        string? rod = Control?.PushRod is { } fit ? "Push rod: " + fit.Describe(desk.Units) : null;
        string[] causes = [.. DragCause.Of(desk.Car).Select(cause => cause.Words(desk.Units))];
        return rod is null && causes.Length == 0
            ? Reply.Lacks(
                [.. Control is null ? new[] { Reply.Control } : [], "masterCylinder.pushRod: depth gauge on both sides of the joint; "
                    + "return hose layout by eye"])
            : string.Join(' ', (string[])[rod ?? "The push rod's fit is not in the file.", .. causes]);
    }

    public Reply Gauges()
    {
        ControlForce foot = desk.Foot!;
        (Force Push, ControlForcePoint At)[] readings =
            [.. new[] { desk.Round(200, 40), desk.Round(400, 80), desk.Round(600, 120) }.Select(push => (push, foot.At(push)))];
        // Gauges are read on a car that stands, and a valve that follows the load then has the whole of it.
        PerAxle<Pressure> Lines(ControlForcePoint at) =>
            foot.Model.Vehicle.Hydraulics.LinePressures(at.Balance.MasterPressure, foot.Model.StaticAxleLoads.Rear);
        string[] sentences =
        [
            .. readings.Where(reading => reading.At.OutletPressures.Front <= desk.Highest).Select(reading => $"{desk.Push(reading.Push)}: "
                + $"{desk.Line(Lines(reading.At).Front)} front, {desk.Line(Lines(reading.At).Rear)} rear."),
            .. readings.Where(reading => reading.At.OutletPressures.Front > desk.Highest).Take(1)
                .Select(reading => $"{desk.Push(reading.Push)}: beyond the {desk.Line(desk.Highest)} of hydraulics.maximumPressure."),
        ];
        return string.Join(' ', sentences) + (desk.Booster is null ? " No booster is fitted" : " Engine running") + desk.Standing + ".";
    }

    public Reply Residual()
    {
        string Of(Axle axle)
        {
            Pressure threshold = desk.Car.Brakes[axle].ThresholdPressure;
            return Control!.Residual[axle] is { } valve
                ? $"{desk.LowLine(valve.Held)} is held, the brake begins at "
                    + $"{desk.LowLine(threshold)}{(valve.Held > threshold ? ": it drags" : "")}"
                : $"none, the brake begins at {desk.LowLine(threshold)}";
        }

        return $"Front: {Of(Axle.Front)}. Rear: {Of(Axle.Rear)}. Usual: about {desk.LowLine(Pressure.FromPoundsForcePerSquareInch(10))} "
            + $"for drums, {desk.LowLine(Pressure.FromPoundsForcePerSquareInch(2))} for discs, and only when the reservoir lies below the "
            + "calipers (common practice).";
    }

    private string RunsOut(ControlForce? laden = null)
    {
        if (desk.Booster!.RunOut is not { } runOut)
        {
            return "has nothing to give";
        }

        if ((laden ?? desk.Foot!).RunOut() is { } end)
        {
            return Say($"runs out at a deceleration of {end.Balance.BrakingRate:0.00} g{(laden is null ? "" : desk.WhenLaden)} ")
                + $"({desk.Push(end.PedalForce)}, {desk.Line(end.OutletPressures.Front)} in the front line)";
        }

        Pressure front = desk.Foot!.Cylinder.OutletPressures(runOut.OutputForce).Front;
        return front > desk.Highest
            ? $"would run out only at {desk.Line(front)} in the front line, beyond the {desk.Line(desk.Highest)} "
                + $"of hydraulics.maximumPressure"
            : $"would run out only at {desk.Line(front)} in the front line, where the pedal's linkage has ended before";
    }

    private string JumpIn(ControlForce foot)
    {
        if (desk.Booster is not { } booster || booster.JumpIn <= Force.Zero)
        {
            return "";
        }

        Pressure jump = foot.Cylinder.OutletPressures(booster.OutputForce(booster.CutInForce)).Front;
        double rate = foot.Model.At(jump < desk.Highest ? jump : desk.Highest).BrakingRate;
        return Say($" The booster's jump-in alone gives {rate:0.00} g.");
    }

    // The pairs form no box: within one bore only ratios next to one another are joined.
    private static IEnumerable<string> Runs(double[] ratios)
    {
        for (int from = 0, to = 0; from < ratios.Length; from = ++to)
        {
            while (to + 1 < ratios.Length && ratios[to + 1] - ratios[to] < 0.75)
            {
                to++;
            }

            yield return from == to ? Say($"{ratios[from]:0.0}") : Say($"{ratios[from]:0.0} to {ratios[to]:0.0}");
        }
    }
}
