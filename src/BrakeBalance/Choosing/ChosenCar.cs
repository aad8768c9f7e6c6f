using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Pedals;
using BrakeBalance.Rules;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Choosing;

/// <summary>What the targets ask of one car; what the foot does not change is worked out once.</summary>
internal sealed class ChosenCar
{
    private readonly Targets _targets;
    private readonly Pressure? _half, _full;
    private readonly Pressure _lock;
    private readonly Lazy<bool> _beyond;
    private readonly Lazy<double> _hottest;
    private readonly Dictionary<(CircuitLayout, bool), EffectivenessReach> _reach = [];

    public ChosenCar(Vehicle car, Targets targets)
    {
        (Vehicle, _targets) = (car, targets);
        Model = new BalanceModel(car, targets.LoadCaseOf(car));
        (_half, _full) = (Model.AtRate(0.5)?.MasterPressure, Model.AtRate(1.0)?.MasterPressure);
        _lock = Model.FirstLockUp(Conditions.DryAdhesion)?.At.MasterPressure ?? Model.MaximumPressure;
        _beyond = new(() => Setting.Of(car).StandsBeyond);
        _hottest = new(() => targets.Use is { } use ? Hottest(use) : double.NaN);
        FrontFirst = SettingSearch.RearFirst(car, car.Conditions) is null;
        RearMargin = SettingSearch.FrictionMargin(car, car.Conditions);
        Efficiency = SettingSearch.Efficiency(car, car.Conditions).Mean;
    }

    public Vehicle Vehicle { get; }

    public BalanceModel Model { get; }

    private bool FrontFirst { get; }

    private double RearMargin { get; }

    private double Efficiency { get; }

    /// <summary>What it misses of the dear targets that no foot changes [–].</summary>
    public double DearMiss => Missed(TargetKind.DiscTemperature, _hottest.Value)
        + (FrontFirst && _targets[TargetKind.FrontFirst].Limit > 0 && _beyond.Value ? 1 : 0);

    /// <summary>Which targets are cheap enough to be asked of every combination; the others are asked of those that come so far.</summary>
    public static bool IsCheap(TargetKind kind) => kind <= TargetKind.LinePressure;

    /// <summary>What a car answers to every target, in their order.</summary>
    /// <param name="car">The car as its file has it.</param>
    /// <param name="targets">What is asked.</param>
    /// <param name="rating">The least rating of its new parts; null when none says one.</param>
    /// <param name="alike">A car that differs from it in pedal, booster or cylinder alone; null for none.</param>
    public static double[] Answers(Vehicle car, Targets targets, Pressure? rating, ChosenCar? alike = null)
    {
        double[] values = new double[targets.All.Length];
        alike ??= new ChosenCar(car, targets);
        alike.Cheap(alike.Behind(car.Control!), car.Control!.Pedal, rating, values);
        alike.Dear(car, values);
        return values;
    }

    /// <summary>What lies between a pedal and the brakes of this car, for all pedals.</summary>
    public Foot Behind(BrakeControl control) => new(this, control);

    /// <summary>The cheap answers with a pedal.</summary>
    public void Cheap(Foot foot, Pedal pedal, Pressure? rating, Span<double> values)
    {
        values[(int)TargetKind.FrontFirst] = FrontFirst ? 1 : 0;
        values[(int)TargetKind.RearMargin] = RearMargin;
        values[(int)TargetKind.Efficiency] = Efficiency;
        Pressure? least = rating is { } parts && !(_targets.Rating < parts) ? parts : _targets.Rating;
        foot.Answer(pedal, _targets.HighestPedalForce, least, values);
    }

    // The setting counts the file's ranges too, so it may refuse what holds with every number at its middle.
    private void Dear(Vehicle car, double[] values)
    {
        values[(int)TargetKind.FrontFirst] = FrontFirst && !(_targets[TargetKind.FrontFirst].Limit > 0 && _beyond.Value) ? 1 : 0;
        EngineOffPresses presses = EngineOffPresses.Of(new ControlForce(Model, car.Control));
        values[(int)TargetKind.StoredStops] = car.Control!.Assist is NoAssist || !presses.IsDescribed ? double.NaN
            : presses.NeedsNoAssist ? double.PositiveInfinity : presses.Count ?? 0;
        values[(int)TargetKind.DiscTemperature] = _hottest.Value;
        double[] margins = !_targets[TargetKind.Failures].IsAsked ? []
            : [.. EffectivenessRules.Check(car with { Uncertainty = null }).Select(verdict => verdict.Margin).OfType<double>()];
        values[(int)TargetKind.Failures] = margins.Length == 0 ? double.NaN : margins.Min();
    }

    private double Missed(TargetKind kind, double value) => _targets[kind].Room(value) is < 0 and var room ? -room : 0;

    private EffectivenessReach Reach(BrakeControl control)
    {
        (CircuitLayout, bool) key = (control.Layout, control.Assist is PoweredAssist);
        return _reach.TryGetValue(key, out EffectivenessReach? known) ? known : _reach[key] = new(Vehicle, control);
    }

    private double Hottest(HeatCycle use)
    {
        try
        {
            var setup = StopSetup.From(Vehicle, Model.LoadCase, Conditions.DryAdhesion);
            HeatResult heat = BrakeHeat.Run(setup.Car, setup.Heat, use, Temperature.FromDegreesCelsius(20), setup.Fluid, withTrace: false);
            return Math.Max(heat.HottestRing.Front.Kelvins, heat.HottestRing.Rear.Kelvins);
        }
        catch (Exception fault) when (fault is ArgumentException or InvalidOperationException)
        {
            return double.PositiveInfinity;
        }
    }

    /// <summary>Booster, cylinder and circuits of one car, asked by one pedal after the other.</summary>
    public sealed class Foot
    {
        private readonly ChosenCar _car;
        private readonly BrakeControl _control;
        private readonly ControlForce _sound, _bare;
        private readonly Force? _half, _full, _bareHalf, _bareFull;
        private readonly PedalTravel? _travelFull, _travelLock;
        private readonly Lazy<ImmutableArray<Force?>> _stored;

        public Foot(ChosenCar car, BrakeControl control)
        {
            (_car, _control) = (car, control);
            _sound = new ControlForce(car.Model, control);
            _bare = control.Assist is NoAssist ? _sound
                : new ControlForce(car.Model, control with { Assist = control.Assist.WithoutEnergy() });
            Force? Input(ControlForce foot, Pressure? master) => master is { } pressure
                ? foot.Control.Assist.InputForce(foot.Cylinder.RodForce(Axle.Front, pressure)) : null;
            (_half, _full) = (Input(_sound, car._half), Input(_sound, car._full));
            (_bareHalf, _bareFull) = (Input(_bare, car._half), Input(_bare, car._full));
            _travelFull = car._full is { } full ? _sound.TravelAt(full) : null;
            _travelLock = _sound.TravelAt(car._lock);
            _stored = new(() => [.. FailureAnalysis.Reserve(_sound, new FailureConditions { BrakingRate = EngineOffPresses.UsualRate })
                .Select(press => car._half is { } half
                    ? press.Assist.InputForce(_sound.Cylinder.RodForce(Axle.Front, half)) : (Force?)null)]);
        }

        public bool Serves(ChosenCar car, BrakeAssist assist, MasterCylinder cylinder, PushRodFit? rod) =>
            ReferenceEquals(_car, car) && ReferenceEquals(_control.Assist, assist)
            && ReferenceEquals(_control.MasterCylinder, cylinder) && ReferenceEquals(_control.PushRod, rod);

        /// <summary>What the dear targets that need no whole car to be refused miss at least [–].</summary>
        /// <remarks>A hair's breadth is let through, for the whole car to decide.</remarks>
        public double DearMissAtLeast(Pedal pedal)
        {
            const double hair = 1e-9;
            bool Enough(Force? input) =>
                input is { } force && pedal.PedalForce(force, Length.Zero) <= EngineOffPresses.UsualForce * (1 + hair);
            double miss = 0;
            if (Apart(pedal) && _car._targets[TargetKind.StoredStops].Limit > 0 && _control.Assist is not NoAssist
                && _control.Assist is not VacuumBooster { VacuumChamberVolume.Value: 0 } && !Enough(_bareHalf))
            {
                miss += _car.Missed(TargetKind.StoredStops, _stored.Value.TakeWhile(Enough).Count());
            }

            if (_car._targets[TargetKind.Failures].IsAsked)
            {
                // The spring of a pedal only takes away as it travels; a ratio that rises may give more.
                double lacks = _car.Reach(_control).LacksAtLeast((helped, newtons) => pedal.Lever is not FixedRatioLever
                    ? double.PositiveInfinity
                    : _sound.Cylinder.OutletPressures((helped ? _sound : _bare).Control.Assist
                        .OutputForce(pedal.InputRodForce(Force.FromNewtons(newtons), Length.Zero))).Front.Pascals * (1 + hair));
                miss += Math.Max(0, _car.Missed(TargetKind.Failures, -lacks) - hair);
            }

            return miss;
        }

        // Where the pedal's ratio or spring changes with its travel, pedal and brakes have to be worked out together.
        private bool Apart(Pedal pedal) => _control.Circuits is null
            || (pedal.Lever is FixedRatioLever && pedal.ReturnSpringRate <= ForcePerLength.Zero);

        public void Answer(Pedal pedal, Force highest, Pressure? rating, Span<double> values)
        {
            bool apart = Apart(pedal);
            ControlForce sound = apart ? _sound : new ControlForce(_car.Model, _control with { Pedal = pedal });
            ControlForce bare = apart || ReferenceEquals(_sound, _bare) ? sound
                : new ControlForce(_car.Model, _bare.Control with { Pedal = pedal });
            double Needed(ControlForce foot, Force? input, Pressure? master) =>
                apart ? input is { } force ? pedal.PedalForce(force, Length.Zero).Newtons : double.PositiveInfinity
                : master is { } pressure ? foot.PedalForceForPressure(pressure)?.Newtons ?? double.PositiveInfinity
                : double.PositiveInfinity;
            values[(int)TargetKind.PedalForceHalf] = Needed(sound, _half, _car._half);
            values[(int)TargetKind.PedalForceFull] = values[(int)TargetKind.LightPedal] = Needed(sound, _full, _car._full);
            values[(int)TargetKind.PedalForceHalfNoAssist] = Needed(bare, _bareHalf, _car._half);
            values[(int)TargetKind.PedalForceFullNoAssist] = Needed(bare, _bareFull, _car._full);

            // Neither the rod's travel nor the stroke that is left depends on the pedal.
            Length? Pad(PedalTravel travel) =>
                travel.StrokeLeft >= Length.Zero && pedal.PadTravel(travel.RodTravel) is { } pad && pad <= pedal.AvailableTravel
                    ? pad : null;
            values[(int)TargetKind.PedalTravelFull] = _control.Circuits is null ? double.NaN
                : _car._full is null ? double.PositiveInfinity
                : _travelFull is not { } travel ? double.NaN
                : Pad(travel)?.Meters ?? double.PositiveInfinity;
            values[(int)TargetKind.TravelLeftAtLock] = _travelLock is not { } atLock ? double.NaN
                : Pad(atLock) is { } used ? (pedal.AvailableTravel - used).Meters : double.NegativeInfinity;
            if (rating is not { } bears)
            {
                values[(int)TargetKind.LinePressure] = double.NaN;
                return;
            }

            PerAxle<Pressure> outlets = apart
                ? _sound.Cylinder.OutletPressures(_control.Assist.OutputForce(pedal.InputRodForce(highest, Length.Zero)))
                : sound.At(highest).OutletPressures;
            values[(int)TargetKind.LinePressure] = Math.Max(outlets.Front.Pascals, outlets.Rear.Pascals) / bears.Pascals;
        }
    }
}
