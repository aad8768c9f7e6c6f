using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using static BrakeBalance.Summaries.DeskCar;

namespace BrakeBalance.Summaries;

/// <summary>The questions on valves, balance, tyres, heat and the wet.</summary>
internal sealed class BalanceQuestions(DeskCar desk)
{
    private const double Wet = Conditions.WetAdhesion;
    private const double TwinRate = 0.8;
    private const int LapStops = 20;
    private const string AdjusterEntry = "hydraulics.rearValves[0].adjuster: two gauges, adjuster fully out, one reading a turn";

    private Vehicle Car => desk.Car;

    // What stands in the rear line, when it is nothing that a screw sets.
    private string NoScrew => Car.Hydraulics.RearValves.Length > 0
        ? "The rear line has no adjustable proportioning valve"
        : desk.Bar is null ? "No valve is fitted in the rear line" : "No valve is fitted in the rear line; the balance bar is what is set";

    public Reply Twin()
    {
        if (desk.Model.RearLiftOffRate <= TwinRate)
        {
            return Say($"At a deceleration of {TwinRate:0.0} g the rear axle is off the road (it leaves it at ")
                + Say($"{desk.Model.RearLiftOffRate:0.00} g), ")
                + "so no bore ratio gives the ideal distribution there: the front brakes do all the work. "
                + "Measure the height of the centre of gravity again.";
        }

        PerAxle<Force> ideal = desk.Model.IdealForces(TwinRate);
        double front = Needed(Axle.Front, ideal.Front), rear = Needed(Axle.Rear, ideal.Rear);
        string present = desk.Bar is { } bar
            ? Say($" The car has {Bores(bar.RearBore / bar.FrontBore)}, with the bar at {100 * bar.FrontForceShare:0.0} % front.") : "";
        return $"At a deceleration of {G(TwinRate)} the ideal distribution needs {desk.Line(Pressure.FromPascals(front))} in front and "
            + $"{desk.Line(Pressure.FromPascals(rear))} at the rear. The axle that needs less pressure gets the bigger bore; for this "
            + $"car that is {Bores(Math.Sqrt(front / rear))} when the bar stands centred.{present}";
    }

    private static string Bores(double rearOverFront) => Math.Abs(rearOverFront - 1) < 0.02 ? "two equal bores"
        : rearOverFront > 1 ? Say($"a bore at the rear {rearOverFront:0.00} times the front's")
        : Say($"a bore in front {1 / rearOverFront:0.00} times the rear's");

    // The best road that the car has to meet: tyres that hold more than a dry road meet another limit there.
    private double Dry => Car.Conditions.BestAdhesion;

    private string OnDry => Dry > Conditions.DryAdhesion ? Say($"at an adhesion of {Dry:0.0#}") : "on dry road";

    public Reply RearLocks() => $"{Invariant.Capital(OnDry)}, in {Car.LoadCases[0].Name}, {LocksFirst(desk.Model.FirstLockUp(Dry))}. "
        + desk.Conclusion;

    public Reply FullyOut()
    {
        if (desk.Valve is not { } valve)
        {
            return $"{NoScrew}. {desk.Conclusion}";
        }

        if (valve.Adjustment is not { } screw)
        {
            return Reply.Lacks(AdjusterEntry);
        }

        LockUp? lockUp = new BalanceModel(Car.WithRearKnee(screw.KneeBackedOff), Car.LoadCases[0]).FirstLockUp(Dry);
        string fullyOut = $"Fully out ({desk.LowLine(screw.KneeBackedOff)}{Say($", slope {valve.Slope:0.00}")}) {LocksFirst(lockUp)} "
            + $"{OnDry} by this file. ";
        return fullyOut + (desk.Answer.Reach is SettingReach.Below or SettingReach.None
            ? desk.Conclusion
            : "If the rear locks all the same, the linings are not as the file says (damp, hot or grabbing) or the valve does not "
                + "work: gauges and a log of stops will tell. " + desk.Conclusion);
    }

    public Reply Series()
    {
        ProportioningValve[] valves = [.. Car.Hydraulics.RearValves.OfType<ProportioningValve>()];
        Pressure inlet = Pressure.FromBars(60);
        Pressure master = inlet / Car.Hydraulics.Split.RearToFrontPressureRatio;
        Pressure passed = Car.Hydraulics.LinePressures(master, desk.Model.StaticAxleLoads.Rear).Rear;
        return valves.Length switch
        {
            0 when Car.Hydraulics.RearValves.Any(valve => valve is LoadSensingValve or LimitingValve) =>
                $"The valve in the rear line is set by {(Car.Hydraulics.SensesLoad ? "the load" : "its limit")}: of {desk.Line(inlet)} it "
                + $"passes {desk.Line(passed)}{desk.Standing}. An adjustable one before it acts as well, so that the rear gets less "
                + "than by " + (desk.Answer is { Variable: SettingVariable.AddedKnee, Recommended: not null }
                    ? "either alone: the recommended setting counts both." : "either alone: two in series starve the rear."),
            0 => $"No proportioning valve is in the rear line: of {desk.Line(inlet)} the rear brakes get {desk.Line(passed)}, and one "
                + $"adjustable valve would stand alone.",
            1 => $"One proportioning valve is in the rear line: of {desk.Line(inlet)} it passes {desk.Line(passed)}. A second one "
                + $"behind it would pass {desk.Line(valves[0].OutletPressure(passed))} if it were alike: two in series starve the rear. "
                + "Keep the warning switch.",
            _ => $"{valves.Length} proportioning valves stand in series: of {desk.Line(inlet)} only {desk.Line(passed)} arrive. "
                + "Take the fixed one's proportioning out, keep its warning switch.",
        };
    }

    public Reply Metering()
    {
        Pressure rear = Car.Brakes.Rear.ThresholdPressure, front = Car.Brakes.Front.ThresholdPressure;
        string begin = $"the front brakes begin at {desk.LowLine(front)}, the rear at {desk.LowLine(rear)}";
        return Car.Hydraulics.FrontValves.OfType<MeteringValve>().FirstOrDefault() is { } hold
            ? $"It opens at {desk.LowLine(hold.OpeningPressure)} and passes all from {desk.LowLine(hold.BlendPressure)}; {begin}. "
                + (hold.OpeningPressure < rear ? "It opens before the rear brakes begin." : "It keeps light fronts from doing all the "
                + "work before the rear brakes begin.")
            : Car.Brakes.Rear is DrumBrake && rear - front > Pressure.FromBars(2)
                ? $"None is fitted, and {begin}: with drums behind, one that opens at about {desk.LowLine(Pressure.FromBars(5))} to "
                    + $"{desk.LowLine(Pressure.FromBars(8))} evens that out (common practice)."
                : $"None is fitted, and {begin}: "
                    + $"{(Car.Brakes.Rear is DrumBrake ? "with so little difference" : "with discs at the rear")} it is not needed "
                    + $"(common practice).";
    }

    public Reply Turns()
    {
        if (desk.Valve is { } valve)
        {
            return valve.Adjustment is { } screw
                ? $"Screwing in raises the knee and with it the rear pressure: {desk.LowLine(screw.KneePerTurn)} a turn from "
                    + $"{SettingWords.Number(screw.KneeBackedOff, desk.Units)} fully out, {SettingWords.Turns(screw.Turns)} in all. "
                    + "A gauge is the proof."
                : Reply.Lacks(AdjusterEntry);
        }

        return desk.Bar is { FrontForceShare: > 0.22 } bar
            ? NoScrew + Say($". Less front share is more rear: at {100 * bar.FrontForceShare:0} % front the rear cylinder makes ")
                + Say($"{bar.RearToFrontPressureRatio:0.00} of the front's pressure, at {100 * bar.FrontForceShare - 2:0} % ")
                + Say($"{(bar with { FrontForceShare = bar.FrontForceShare - 0.02 }).RearToFrontPressureRatio:0.00}. A gauge on each ")
                + Say($"line is the proof.")
            : $"{NoScrew}, so there is nothing to turn. {desk.Conclusion}";
    }

    public Reply Ever() =>
        $"No: a locked front axle slides straight on, a locked rear axle spins the car. Here {LocksFirst(desk.Model.FirstLockUp(Dry))} "
            + $"{OnDry} and {LocksFirst(desk.Model.FirstLockUp(Wet))} on wet road; "
        + (desk.Model.FirstRearLedRate(0.15, 0.8) is { } rate
            ? Say($"the rear uses more of its tyres' adhesion than the front first at a deceleration of {rate:0.00} g.")
            : "the front uses more of its tyres' adhesion at every deceleration from 0.15 to 0.80 g.")
        + (desk.Answer.IsBuiltBeyond ? $" {SettingWords.AsBuilt} in some of the conditions."
            : !desk.Answer.PresentIsBeyond ? ""
            : new[] { Dry, Wet }.Any(road => desk.Model.FirstLockUp(road)?.First == Axle.Rear) ? $" {Invariant.Capital(Beyond)}."
            : $" In other conditions the rear can: {Beyond}.");

    private string Beyond => $"the present setting lies beyond the safe limit ({SettingWords.SafeLimit(desk.Answer, desk.Units)})";

    public Reply BarOrValve()
    {
        // The same car once with a straight line and once with a bent one, each set as well as it goes.
        var bore = Length.FromMillimeters(19.05);
        var bar = new BrakeHydraulics { Split = new BalanceBarSplit { FrontBore = bore, RearBore = bore, FrontForceShare = 0.5 } };
        var valve = new BrakeHydraulics
        {
            RearValves = [new ProportioningValve { Knee = Pressure.FromBars(30), Slope = desk.Valve?.Slope ?? SettingSearch.AddedSlope }],
        };
        string Of(BrakeHydraulics hydraulics) => Setting.Of(Car with { Hydraulics = hydraulics }).Recommended is { } best
            ? Say($"a mean efficiency of {100 * best.MeanEfficiency:0} %")
            : "no setting that keeps the front first";
        return $"A bar is a straight line, a valve a bent one. Each set as well as it goes (front first in all conditions): with a bar "
            + $"{Of(bar)}, with a valve {Of(valve)}.";
    }

    public Reply BiggerTyres()
    {
        static string Share(Vehicle vehicle) => new BalanceModel(vehicle, vehicle.LoadCases[0]).AtRate(Firm) is { } point
            ? Say($"{100 * (point.BrakingForces.Rear / (point.BrakingForces.Front + point.BrakingForces.Rear)):0.0} %")
            : "none";
        double sticky = Car.Conditions.TrackAdhesion;
        PerAxle<Tyres.Tyre> tyres = Car.Tyres, tall = tyres.Select(tyre => tyre with { LoadedRadius = tyre.LoadedRadius * 1.05 });
        Vehicle front = Car with { Tyres = new(tall.Front, tyres.Rear) }, rear = Car with { Tyres = new(tyres.Front, tall.Rear) };
        return $"Taller tyres have a longer lever against the brake. At a deceleration of {G(Firm)} the rear does {Share(Car)} of the "
            + $"braking, {Share(front)} with front tyres 5 % taller (the unsafe way) and {Share(rear)} with rear ones. "
            + Say($"On tyres with an adhesion of {sticky:0.0#} {LocksFirst(desk.Model.FirstLockUp(sticky))}: ")
            + "more adhesion takes more load off the rear, so test again.";
    }

    public Reply Pads()
    {
        Brake brake = Car.Brakes.Front;
        double factor = Math.Min(1.3, 1.15 / brake.FrictionCoefficient);
        if (factor * brake.FrictionCoefficient > brake.GreatestFriction)
        {
            return Say($"Front friction up by {100 * (factor - 1):0} % would make the front drum's shoes lock by themselves: not on ")
                + Say($"this brake.");
        }

        LockUp? before = desk.Model.FirstLockUp(Dry);
        LockUp? later = new BalanceModel(Car.WithFrictionFactors(factor, 1), Car.LoadCases[0]).FirstLockUp(Dry);
        string Efficiency(LockUp? lockUp) => lockUp is null ? "" : Say($" with an efficiency of {100 * lockUp.Efficiency:0} %");
        string verdict = later is null || later.FrontFirstOrTogether
            ? "The order is safe, but the rear does less: put the new friction into the file, and set by the safe limit that follows."
            : "The order is unsafe.";
        return Say($"Front friction up by {100 * (factor - 1):0} %: {OnDry} {LocksFirst(later)}{Efficiency(later)}; ")
            + $"as it is, {LocksFirst(before)}{Efficiency(before)}. {verdict} Race pads that are cold do the opposite.";
    }

    public Reply DryToWet()
    {
        LockUp? dry = desk.Model.FirstLockUp(Dry), wet = desk.Model.FirstLockUp(Wet);
        if (dry is null || wet is null)
        {
            return $"The pressure does not reach lock-up {OnDry}: the setting never decides there.";
        }

        string setting = desk.Answer.PresentIsBeyond
            ? $"{Beyond}: that comes first"
            : desk.Valve is { } valve ? wet.At.LinePressures.Front * Car.Hydraulics.Split.RearToFrontPressureRatio <= valve.Knee
                ? "the valve is not reached in the wet, so nothing needs to be set"
                : "the knee is passed in the wet as well, so a higher knee would use more of the road there, "
                    + (desk.Answer.Recommended is { Knee: { } knee } best && (knee - valve.Knee).Bars > 0.05
                        ? $"and up to the recommended setting, {SettingWords.Number(best, desk.Units)}, the front locks first in the dry "
                            + "too"
                        : "but no higher one is recommended: it has to be safe in the dry too")
            : Car.Hydraulics.SensesLoad ? "the valve follows the load by itself" : "a straight line cannot suit both";
        return $"{Invariant.Capital(OnDry)} the first lock-up comes at {desk.Line(dry.At.LinePressures.Front)} in the front line, in the "
            + $"wet at {desk.Line(wet.At.LinePressures.Front)}; {setting}. "
            + Say($"Efficiency: {100 * dry.Efficiency:0} % dry, {100 * wet.Efficiency:0} % wet. Set for the dry, prove in the wet, ")
            + Say($"never the other way round.");
    }

    public Reply SoftPedal()
    {
        List<string> lacking = [.. ((Axle[])[Axle.Front, Axle.Rear]).Where(axle => Car.AxleDynamics[axle].Heat is null)
            .Select(axle => $"{(axle == Axle.Front ? "front" : "rear")}.heat: weigh the disc or drum, note the pad or lining")];
        if (Car.Control?.Circuits is not { } circuits)
        {
            lacking.Add("fluid.grade: as on the bottle, and when it was last changed");
            return Reply.Lacks(lacking);
        }

        if (lacking.Count > 0)
        {
            return Reply.Lacks(lacking);
        }

        BrakeFluidGrade grade = circuits.Front.Fluid.Grade;
        string At(Temperature temperature) => Answers.Measure.Temperature.Text(temperature, desk.Units);
        string boils = $"{grade.Name} boils at {At(grade.DryBoilingPoint)} when fresh and at {At(grade.WetBoilingPoint)} with the "
            + $"water of about two years";
        if (StopSetup.WhyNoStop(Car, Car.LoadCases[0]) is not null)
        {
            return $"The foot brings no pressure to the brakes by this file, so nothing gets hot. {boils}.";
        }

        (Speed from, Speed to, HeatResult? heat) = Lap();
        string stops = $"{LapStops} stops from {Answers.Measure.Speed.Text(from, desk.Units)} to "
            + $"{Answers.Measure.Speed.Text(to, desk.Units)} at {G(Firm)}, one every 30 s";
        if (heat is null)
        {
            return $"These brakes do not bear {stops}. {boils}.";
        }

        PerAxle<Temperature> hottest = heat.HottestFluidDriving;
        Axle hotter = hottest.Front > hottest.Rear ? Axle.Front : Axle.Rear;
        string when = heat.FirstBoilingStop is { } wet
            ? $"old fluid boils in stop {wet}, fresh fluid {(heat.FirstDryBoilingStop is { } dry ? $"in stop {dry}" : "not")}"
            : "neither boils while driving";
        return $"After {stops}, the {(hotter == Axle.Front ? "front" : "rear")} fluid is the hottest at {At(hottest[hotter])}. "
            + $"{boils}: {when}. A soft pedal that comes back when cool is boiling fluid: change it.";
    }

    public Reply DampGrab()
    {
        BrakeState grab = Car.Conditions.BrakeStates.MaxBy(state => state.Rear)!;
        if (grab.Rear <= 1)
        {
            return Reply.Lacks("conditions.brakeStates: a state with more friction at the rear");
        }

        var damp = new BalanceModel(Car.WithFrictionFactors(grab.Front, grab.Rear), Car.LoadCases[0]);
        return Say($"With {100 * (grab.Rear - 1):0} % more friction at the rear ({grab.Name}) {LocksFirst(damp.FirstLockUp(Wet))} on ")
            + Say($"wet road and ")
            + $"{LocksFirst(damp.FirstLockUp(Dry))} {OnDry}; without it {LocksFirst(desk.Model.FirstLockUp(Wet))} and "
            + $"{LocksFirst(desk.Model.FirstLockUp(Dry))}. {(Car.Brakes.Rear is DrumBrake ? "Drums" : "Discs")} that grab more than "
            + $"that: dry them, look for leaks. "
            + desk.Conclusion;
    }

    private double Needed(Axle axle, Force force) =>
        Car.Brakes[axle].ThresholdPressure.Pascals
        + force.Newtons * Car.Tyres[axle].LoadedRadius.Meters / (2 * Car.Brakes[axle].TorqueNewtonMetresPerPascal);

    private (Speed From, Speed To, HeatResult? Heat) Lap()
    {
        try
        {
            var setup = StopSetup.From(Car, Car.LoadCases[0], Dry);
            Speed from = Speed.FromKilometersPerHour(Math.Min(160, 0.8 * setup.MaximumSpeed.KilometersPerHour));
            Acceleration rate = Acceleration.FromStandardGravity(Firm);
            var cycle = HeatCycle.Repeated(LapStops, from, from / 2, rate, Duration.FromSeconds(30), samePressure: false);
            return (from, from / 2, BrakeHeat.Run(
                setup.Car, setup.Heat, cycle, Temperature.FromDegreesCelsius(20), setup.Fluid, withTrace: false));
        }
        catch (Exception fault) when (fault is ArgumentException or InvalidOperationException)
        {
            return (Speed.FromKilometersPerHour(160), Speed.FromKilometersPerHour(80), null);
        }
    }
}
