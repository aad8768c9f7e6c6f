using System.Globalization;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet;
using UnitSystem = BrakeBalance.Answers.UnitSystem;

namespace BrakeBalance.Summaries;

/// <summary>The twenty-five questions that owners of modified cars ask most, answered from a vehicle file, or with the number that is lacking.</summary>
/// <remarks>The questions are common practice: a composite of what is asked in workshops and forums, in own words.</remarks>
public static class QuestionDesk
{
    private const double Dry = Conditions.DryAdhesion;
    private const double Wet = Conditions.WetAdhesion;
    private const double HardStop = 0.6;
    private const double TwinRate = 0.8;
    private static readonly Force Push = Force.FromPoundsForce(75);

    /// <summary>Answers all questions.</summary>
    /// <param name="reading">The car as read.</param>
    /// <returns>Twenty-five answers in order.</returns>
    /// <param name="units">The system of units.</param>
    public static IReadOnlyList<QuestionAnswer> Answer(VehicleReading reading, UnitSystem units = UnitSystem.Si) => new Desk(reading, units).All();

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>One car at the desk.</summary>
    private sealed class Desk(VehicleReading reading, UnitSystem units)
    {
        private static readonly string Vacuum = "assist.vacuum: vacuum gauge at the booster's hose, hot, in gear, lowest of ten stops and goes";
        private static readonly string Control = "pedal, assist and masterCylinder: tape on the pedal (pivot to pad over pivot to rod), bore cast on the cylinder, kind of booster";
        private static readonly string Supply = "assist of type hydraulic with reliefPressure and pumpFlow: load gauge with shut-off valve (seconds only) and flow meter at idle";
        private static readonly string Fluid = "fluid: clearance and compliance of each axle, hose lengths; or a rule at the pedal under 100 lbf";

        private readonly Vehicle _car = reading.Vehicle;
        private readonly BalanceModel _model = new(reading.Vehicle, reading.Vehicle.LoadCases[0]);
        private readonly ControlForce? _foot = reading.Vehicle.Control is null ? null : new ControlForce(new BalanceModel(reading.Vehicle, reading.Vehicle.LoadCases[0]));
        private readonly ControlSummary? _control = ControlSummary.Of(reading.Vehicle);

        private PoweredAssist? Booster => _car.Control?.Assist as PoweredAssist;

        private ProportioningValve? Valve => _car.Hydraulics.RearProportioningValve;

        private bool Front => _model.FirstLockUp(Dry)?.FrontFirstOrTogether ?? true;

        public IReadOnlyList<QuestionAnswer> All() =>
        [
            Q(1, "Is there enough vacuum for a vacuum booster with this camshaft?", "notebook 03", [Vacuum], Vacuumed(), "assist"),
            Q(2, "The pedal is solid and the car will not stop without a booster: why?", "notebook 03", [Control], Bare(), "pedal", "masterCylinder", "front.brake"),
            Q(3, "Can a pump-fed booster be run from this pump?", "notebook 03, command bench", [Supply], PumpFed(), "assist"),
            Q(4, "What does a lower pedal ratio cost?", "notebook 03", [Control], Ratio(), "pedal"),
            Q(5, "Why is the pedal touchy?", "notebook 03", [Control], Touchy(), "pedal", "assist"),
            Q(6, "Why is the steering heavy while braking?", "notebook 08, command bench", [Supply + "; return layout and fluid by eye"], Steering(), "assist"),
            Q(7, "How many stops are left when the engine stalls?", "notebook 03", [Control + "; chamber or accumulator volumes of the booster"], Reserve(), "assist"),
            Q(8, "Is the booster too small for the car?", "notebook 03", [Control], Small(), "assist"),
            Q(9, "Which master cylinder bore fits?", "notebook 03", [Control, Fluid], Bore(), "masterCylinder", "pedal", "fluid"),
            Q(10, "Does a hard push exceed the pressure that calipers and hoses stand?", "notebook 03", [Control], Ceiling(), "masterCylinder", "pedal"),
            Q(11, "Two cylinders on a bar: which axle gets the bigger bore?", "notebook 02", [], Twin(), "loadCases", "front.brake", "rear.brake"),
            Q(12, "Where does a long pedal come from?", "notebook 04", [Control, Fluid], LongPedal(), "fluid", "masterCylinder"),
            Q(13, "Why do the brakes drag after a booster swap?", "notebook 04, command bench", ["masterCylinder.pushRod: depth gauge on both sides of the joint; return hose layout by eye"], Drag(), "masterCylinder"),
            Q(14, "Which pressures should the gauges show?", "notebook 03 (gauge sheet)", [Control], Gauges(), "pedal", "assist", "masterCylinder"),
            Q(15, "The rear locks after a change of front brakes: what now?", "notebooks 01 and 02, command measure bands", [], RearLocks(), "rear.brake", "front.brake", "loadCases"),
            Q(16, "The valve is fully out and the rear still locks: what is left?", "notebook 05, command measure setting", ["hydraulics.rearValves: a proportioning valve with its adjuster (two gauges, adjuster fully out, one reading a turn)"], FullyOut(), "hydraulics", "rear.brake"),
            Q(17, "Do the fixed and the adjustable valve go together?", "notebook 01", ["hydraulics.rearValves: list every valve in the rear line, master cylinder first"], Series(), "hydraulics"),
            Q(18, "Is the metering valve for the front needed?", "notebook 01", [], Metering(), "hydraulics", "rear.brake.thresholdPressure"),
            Q(19, "Are residual pressure valves needed, and where?", "notebook 04", [Control + "; whether the reservoir lies below the calipers"], Residual(), "masterCylinder"),
            Q(20, "Which way is more rear, and how many turns?", "notebook 05, command measure gauges", ["hydraulics.rearValves[0].knob: two gauges, adjuster fully out, one reading a turn"], Turns(), "hydraulics"),
            Q(21, "Should the rear ever lock first?", "notebooks 01 and 06", [], Ever(), "loadCases"),
            Q(22, "Balance bar or valve?", "notebook 02", [], BarOrValve(), "rear.brake", "front.brake"),
            Q(23, "What do bigger tyres change?", "notebook 01", [], Tyres(), "front.tyre", "rear.tyre"),
            Q(24, "What do race pads in front only change?", "notebook 02", [], Pads(), "front.brake.friction", "rear.brake.friction"),
            Q(25, "Set for the dry: how much for the wet?", "notebook 01", [], DryToWet(), "hydraulics"),
        ];

        private QuestionAnswer Q(int number, string question, string more, string[] lacking, string? answer, params string[] rests) => new()
        {
            Number = number,
            Question = question,
            Answer = answer,
            Lacking = answer is null ? lacking : [],
            Vague = [.. reading.Ranges.Select(r => r.Path).Concat(reading.FromCarClass).Distinct().Where(path => rests.Any(start => path.StartsWith(start, StringComparison.Ordinal)))],
            More = more,
        };

        private string? Vacuumed()
        {
            if (Booster is not VacuumBooster vacuum || _foot?.RunOut() is not { } end)
            {
                return null;
            }

            Force? dead = Dead(HardStop);
            return Text($"With {vacuum.Supply.Vacuum.InchesOfMercury:0} inHg the assist runs out at a braking rate of {end.Balance.BrakingRate:0.00} ({end.PedalForce.PoundsForce:0} lbf); beyond that every further bar is unassisted. With no assist a rate of {HardStop:0.0} takes {dead?.PoundsForce ?? 0:0} lbf.");
        }

        private Force? Dead(double rate) => _foot is null ? null : new ControlForce(_model, _foot.Control with { Assist = _foot.Control.Assist.WithoutEnergy() }).AtRate(rate)?.PedalForce;

        private string? Bare() => Dead(HardStop) is { } force
            ? Text($"Without assist a braking rate of {HardStop:0.0} takes {force.Newtons:0} N ({force.PoundsForce:0} lbf) at the pedal; a comfortable leg gives about 70 lbf. A smaller bore or a higher pedal ratio lowers it, and lengthens the pedal.")
            : null;

        private string? PumpFed() => Booster is HydraulicBooster hydraulic && _foot?.RunOut() is { } end
            ? Text($"At a relief pressure of {hydraulic.ReliefPressure.PoundsForcePerSquareInch:0} psi the assist runs out at {end.OutletPressures.Front.PoundsForcePerSquareInch:0} psi in the front line; the pump's flow of {hydraulic.PumpFlow.LitersPerMinute:0.0} l/min is shared with the steering.")
            : null;

        private string? Ratio()
        {
            if (Dead(HardStop) is not { } force || _car.Control is not { } control)
            {
                return null;
            }

            double ratio = control.Pedal.Lever.RatioAt(Length.Zero);
            return Text($"The force goes with one over the ratio: {force.PoundsForce:0} lbf without assist at {ratio:0.0} : 1 would be {force.PoundsForce * ratio / 6:0} lbf at 6 : 1, for {6 / ratio:0.0} times the pedal travel.");
        }

        private string? Touchy()
        {
            if (_foot is null || _foot.AtRate(0.3) is not { } easy || _foot.AtRate(HardStop) is not { } hard)
            {
                return null;
            }

            double gain = (HardStop - 0.3) / (hard.PedalForce - easy.PedalForce).PoundsForce;
            return Text($"A braking rate of 0.3 takes {easy.PedalForce.PoundsForce:0} lbf, {HardStop:0.0} takes {hard.PedalForce.PoundsForce:0} lbf: {10 * gain:0.00} of rate for ten pounds. More bore, less boost or less pedal ratio calms it.");
        }

        private string? Steering() => Booster is HydraulicBooster hydraulic
            ? Text($"Booster and steering share {hydraulic.PumpFlow.LitersPerMinute:0.0} l/min, of which the steering is taken to want {hydraulic.SteeringFlow.LitersPerMinute:0.0}; the return stands at {hydraulic.ReturnBackPressure.Bars:0.0} bar. Too little flow, a shared return or cloudy fluid make it heavy.")
            : null;

        private string? Reserve()
        {
            if (_control is null || _control.LoadCases[0].EngineOff is not { IsDescribed: true, WithoutAssist: { } spent } presses)
            {
                return null;
            }

            string dead = Text($"a braking rate of {presses.BrakingRate:0.0} takes {spent.PoundsForce:0} lbf ({spent.Newtons:0} N)");
            string limit = Text($"{presses.GreatestPedalForce.PoundsForce:0} lbf ({presses.GreatestPedalForce.Newtons:0} N)");
            return Booster is null ? $"There is no assist to lose: {dead}."
                : presses.Count is not { } count ? $"Any number: with the store spent {dead}, no more than {limit}."
                : Text($"{count} press{(count == 1 ? "" : "es")} in a row at a braking rate of {presses.BrakingRate:0.0} take no more than ")
                    + $"{limit}; with the store spent {dead}. Count them on the car, engine off.";
        }

        private string? Small() => Booster is { } booster && _foot?.RunOut() is { } end
            ? Text($"At its most the booster adds {booster.MaximumAssist.Newtons:0} N and runs out at a braking rate of {end.Balance.BrakingRate:0.00}; below about 0.6 it is too small for the car, its cylinder or its vacuum.")
            : null;

        private string? Bore()
        {
            if (_control is not { Choices.Count: > 0 })
            {
                return null;
            }

            ControlChoiceResult[] fits = [.. _control.Choices.Where(c => c.Fits)];
            return fits.Length == 0
                ? "No bore within three sixteenths of the present one meets effort, travel and failed-assist effort together with this booster; see the map in the notebook for what each one misses."
                : Text($"Bores of {fits.Min(f => f.Bore.Inches):0.000} to {fits.Max(f => f.Bore.Inches):0.000} in fit, with pedal ratios of {fits.Min(f => f.PedalRatio):0.0} to {fits.Max(f => f.PedalRatio):0.0}: effort at 0.8, travel and failed assist all within their limits.");
        }

        private string? Ceiling()
        {
            if (_foot is null)
            {
                return null;
            }

            ControlForcePoint push = _foot.At(Push), hard = _foot.At(Force.FromNewtons(500));
            string bar = _car.Hydraulics.Split is BalanceBarSplit ? " The bar halves the force that each cylinder sees, near enough; a sum that leaves it out comes out about twice too high." : "";
            return Text($"{Push.PoundsForce:0} lbf make {push.OutletPressures.Front.PoundsForcePerSquareInch:0} psi in front and {push.OutletPressures.Rear.PoundsForcePerSquareInch:0} psi at the rear, 500 N {hard.OutletPressures.Front.PoundsForcePerSquareInch:0} and {hard.OutletPressures.Rear.PoundsForcePerSquareInch:0} psi. Compare with the lowest rating of caliper, hose and fitting.") + bar;
        }

        private string Twin()
        {
            PerAxle<Force> ideal = _model.IdealForces(TwinRate);
            double front = Needed(Axle.Front, ideal.Front), rear = Needed(Axle.Rear, ideal.Rear);
            if (_model.RearLiftOffRate <= TwinRate)
            {
                return Text($"At a deceleration of {TwinRate:0.0} g the rear axle is off the road (it leaves it at {_model.RearLiftOffRate:0.00} g), so no bore ratio gives the ideal distribution there: the front brakes do all the work. Measure the height of the centre of gravity again.");
            }

            string bigger = rear < front ? "rear" : "front";
            return Text($"At a braking rate of {TwinRate:0.0} the ideal distribution needs {front / 1e5:0} bar in front and {rear / 1e5:0} bar at the rear. The axle that needs less pressure gets the bigger bore: the {bigger}, with a bore ratio of {Math.Sqrt(Math.Max(front, rear) / Math.Min(front, rear)):0.00} when the bar stands centred.");
        }

        private double Needed(Axle axle, Force force) =>
            _car.Brakes[axle].ThresholdPressure.Pascals + force.Newtons * _car.Tyres[axle].LoadedRadius.Meters / (2 * _car.Brakes[axle].TorqueNewtonMetresPerPascal);

        private string? LongPedal()
        {
            if (_foot?.AtRate(0.8) is not { } point || _foot.TravelAt(point.Balance.MasterPressure) is not { } travel)
            {
                return null;
            }

            if (!travel.Reaches)
            {
                return Text($"A braking rate of 0.8 is not reached: {travel.Warning}");
            }

            PedalTravelPart[] parts = [.. travel.Parts.OrderByDescending(p => p.Travel).Take(3)];
            return Text($"At a braking rate of 0.8 the pedal goes {travel.Pad?.Millimeters ?? 0:0} mm, mostly through {string.Join(", ", parts.Select(p => Text($"{p.Name} ({p.Travel.Millimeters:0.0} mm)")))}. Adjust the shoes and bleed before blaming the cylinder.");
        }

        private string? Drag() => _car.Control?.PushRod is { } rod
            ? "Push rod: " + rod.Describe() + (_control!.Notices.Any(n => n.Contains("drag", StringComparison.Ordinal)) ? " " + _control.Notices.First(n => n.Contains("drag", StringComparison.Ordinal)) : "")
            : null;

        private string? Gauges() => _control is null ? null : string.Join(' ', _control.LoadCases[0].Gauges.Where((_, i) => i % 2 == 1).Select(g =>
            Text($"{g.PedalForce.PoundsForce:0} lbf: {g.Balance.LinePressures.Front.PoundsForcePerSquareInch:0} psi front, {g.Balance.LinePressures.Rear.PoundsForcePerSquareInch:0} psi rear."))) + " Engine running.";

        private string RearLocks()
        {
            return Text($"Dry, in {_car.LoadCases[0].Name}, the {(Front ? "front" : "rear")} locks first. ") + SettingWords.Sentence(Setting.Of(_car), units);
        }

        private string? FullyOut()
        {
            if (Valve is not { Adjustment: { } screw } valve)
            {
                return null;
            }

            Vehicle set = _car.WithRearKnee(screw.KneeFullyOut);
            LockUp? lockUp = new BalanceModel(set, _car.LoadCases[0]).FirstLockUp(Dry);
            return lockUp?.First == Axle.Rear
                ? Text($"Even fully out ({screw.KneeFullyOut.Bars:0} bar, slope {valve.Slope:0.00}) the rear locks first at {lockUp.At.BrakingRate:0.00}: the rear brakes are too strong for this slope. Smaller wheel cylinder or pistons, linings of less friction, or a valve of lower slope.")
                : Text($"Fully out ({screw.KneeFullyOut.Bars:0} bar) the front locks first at {lockUp?.At.BrakingRate ?? 0:0.00} by this file. If the rear locks all the same, the file is wrong about its linings (damp, hot or grabbing), a gauge will show whether the valve works, and a stop log will say more.");
        }

        private string? Series()
        {
            ProportioningValve[] valves = [.. _car.Hydraulics.RearValves.OfType<ProportioningValve>()];
            Pressure inlet = Pressure.FromBars(60);
            return valves.Length switch
            {
                0 => null,
                1 => Text($"One proportioning valve is in the rear line: at 60 bar it passes {_car.Hydraulics.LinePressures(inlet).Rear.Bars:0} bar. A second one behind it would pass {valves[0].OutletPressure(valves[0].OutletPressure(inlet)).Bars:0} bar if it were alike: two in series starve the rear. Keep the warning switch."),
                _ => Text($"{valves.Length} proportioning valves stand in series: of 60 bar only {_car.Hydraulics.LinePressures(inlet).Rear.Bars:0} bar arrive. Take the fixed one's proportioning out, keep its warning switch."),
            };
        }

        private string Metering()
        {
            HoldOffValve? hold = _car.Hydraulics.FrontValves.OfType<HoldOffValve>().FirstOrDefault();
            Pressure rear = _car.Brakes.Rear.ThresholdPressure, front = _car.Brakes.Front.ThresholdPressure;
            return hold is not null
                ? Text($"It opens at {hold.OpeningPressure.Bars:0.#} bar and passes all from {hold.BlendPressure.Bars:0.#} bar; the rear brakes begin at {rear.Bars:0.#} bar. It keeps light fronts from doing all the work before the rear shoes touch.")
                : Text($"There is none. The front begins at {front.Bars:0.#} bar, the rear at {rear.Bars:0.#} bar: {(rear - front > Pressure.FromBars(2) ? "with drums behind, one that opens at about 5 to 8 bar evens that out (common practice)" : "with so little difference it is not needed")}.");
        }

        private string? Residual()
        {
            if (_car.Control is not { } control)
            {
                return null;
            }

            string Of(Axle axle) => control.Residual[axle] is { } valve
                ? Text($"{valve.Held.PoundsForcePerSquareInch:0} psi is held, the brake begins at {_car.Brakes[axle].ThresholdPressure.PoundsForcePerSquareInch:0} psi{(valve.Held > _car.Brakes[axle].ThresholdPressure ? ": it drags" : "")}")
                : "none";
            return Text($"Front: {Of(Axle.Front)}. Rear: {Of(Axle.Rear)}. About 10 psi for drums, 2 psi for discs only when the reservoir lies below the calipers (common practice).");
        }

        private string? Turns() => Valve?.Adjustment is { } screw
            ? Text($"Screwing in raises the knee and with it the rear pressure: {screw.KneePerTurn.PoundsForcePerSquareInch:0} psi a turn from {screw.KneeFullyOut.PoundsForcePerSquareInch:0} psi fully out, {screw.Turns:0.#} turns in all. A gauge is the proof.")
            : null;

        private string Ever() =>
            Text($"No: a locked front axle slides straight on, a locked rear axle spins the car. Here the {(Front ? "front" : "rear")} locks first on dry road and the {((_model.FirstLockUp(Wet)?.FrontFirstOrTogether ?? true) ? "front" : "rear")} on wet; ") +
            (_model.FirstRearLedRate(0.15, 0.8) is { } rate ? Text($"from a braking rate of {rate:0.00} on the rear uses more of its tyres than the front.") : "the front uses more of its tyres at every braking rate from 0.15 to 0.80.");

        private string BarOrValve()
        {
            // The same car once with a straight line and once with a bent one, each set as well as it goes.
            var bar = _car with { Hydraulics = new BrakeHydraulics { Split = new BalanceBarSplit { FrontBore = Length.FromMillimeters(19.05), RearBore = Length.FromMillimeters(19.05), FrontForceShare = 0.5 } } };
            var valve = _car with { Hydraulics = new BrakeHydraulics { RearValves = [new ProportioningValve { Knee = Pressure.FromBars(30), Slope = Valve?.Slope ?? 0.4 }] } };
            SettingValue? Best(Vehicle vehicle) => Setting.Of(vehicle).Recommended;
            string Of(SettingValue? point) => point is null ? "no setting keeps the rear from locking first" : Text($"{100 * point.MeanEfficiency:0} % of the road used on average");
            return Text($"A bar is a straight line, a valve a bent one. Each set as well as it goes (front first in all conditions): with a bar {Of(Best(bar))}, with a valve {Of(Best(valve))}.");
        }

        private string Tyres()
        {
            double Share(Vehicle vehicle) => new BalanceModel(vehicle, vehicle.LoadCases[0]).AtRate(0.6) is { } p ? p.BrakingForces.Rear / (p.BrakingForces.Front + p.BrakingForces.Rear) : 0;
            Vehicle taller = _car with { Tyres = new(_car.Tyres.Front with { LoadedRadius = _car.Tyres.Front.LoadedRadius * 1.05 }, _car.Tyres.Rear) };
            return Text($"Taller tyres have a longer lever against the brake. Five per cent on the front takes the rear's share at a braking rate of 0.6 from {Share(_car):0.000} to {Share(taller):0.000}, the unsafe way; on the rear it works the other way. Stickier tyres raise the rate and take load off the rear: test again.");
        }

        private string Pads()
        {
            double factor = Math.Min(1.3, 1.15 / _car.Brakes.Front.FrictionCoefficient);
            if (factor * _car.Brakes.Front.FrictionCoefficient > _car.Brakes.Front.GreatestFriction)
            {
                return Text($"Front friction up by {100 * (factor - 1):0} % would make the front drum's shoes lock by themselves: not on this brake.");
            }

            LockUp? before = _model.FirstLockUp(Dry), later = new BalanceModel(_car.WithFrictionFactors(factor, 1), _car.LoadCases[0]).FirstLockUp(Dry);
            return Text($"Front friction up by {100 * (factor - 1):0} %: on dry road the {Word(later)} locks first at {later?.At.BrakingRate ?? 0:0.00} and {100 * (later?.Efficiency ?? 0):0} % of the road is used, before it was the {Word(before)} and {100 * (before?.Efficiency ?? 0):0} %. Safe order, but the rear idles: the valve can go in. Cold race pads do the opposite.");
        }

        private static string Word(LockUp? lockUp) => lockUp?.First == Axle.Rear ? "rear" : "front";

        private string DryToWet()
        {
            LockUp? dry = _model.FirstLockUp(Dry), wet = _model.FirstLockUp(Wet);
            if (dry is null || wet is null)
            {
                return "The pressure does not reach lock-up on dry road: the setting never decides there.";
            }

            string knee = Valve is { } valve
                ? wet.At.LinePressures.Front <= valve.Knee ? "the valve is not reached in the wet, so nothing needs to be set" : "the knee is passed in the wet as well, so a higher knee would use more of the road there, and be wrong again in the dry"
                : "a straight line cannot suit both";
            return Text($"In the dry the first lock-up comes at {dry.At.LinePressures.Front.Bars:0} bar, in the wet at {wet.At.LinePressures.Front.Bars:0} bar; {knee}. Efficiency: {100 * dry.Efficiency:0} % dry, {100 * wet.Efficiency:0} % wet. Set for the dry, prove in the wet, never the other way round.");
        }
    }
}
