namespace BrakeBalance.Stops;

/// <summary>Equations of a straight stop: speed, slip of each axle, load transfer, the load that a valve senses, and the energies on the
/// side.</summary>
/// <remarks>
/// <para>m v′ = −(F₁ + F₂ + D + R + G); I ω′ = F R − M; with ω = (1 − s) v/R the slip obeys s′ = ((1 − s) v′ +
/// (R/I)(M − F R))/v. Slip instead of wheel speed as the state keeps the stiff part on the diagonal.</para>
/// </remarks>
internal struct StraightStopSystem(in CarNumbers car, in PressureCommand command, double initialSpeed, double? antilockEfficiency,
    List<StopSample>? trace) : IStiffSystem
{
    public const int Speed = 0;
    public const int FrontSlip = 1;
    public const int RearSlip = 2;
    public const int Transfer = 3;
    public const int TransferRate = 4;
    public const int Sensed = 5;
    public const int Distance = 6;
    public const int FrontBrakeEnergy = 7;
    public const int RearBrakeEnergy = 8;
    public const int FrontTyreEnergy = 9;
    public const int RearTyreEnergy = 10;
    public const int ResistanceEnergy = 11;
    public const int States = 12;

    public const int Standstill = 0;
    public const int FrontSaturates = 1;
    public const int FrontReleases = 2;
    public const int RearSaturates = 3;
    public const int RearReleases = 4;
    public const int At80Percent = 5;
    public const int At10Percent = 6;
    public const int Functions = 7;

    /// <summary>Speed in metres per second at which the equations end; the rest of the stop is closed with constant deceleration.</summary>
    public const double EndSpeed = 0.1;

    private const double TransferScale = 1e-4;

    // Adhesion that falls with the load and the load that moves with the adhesion are followed until they agree.
    private const int LoadPasses = 40;
    private const double LoadTolerance = 1e-5;
    private readonly CarNumbers _car = car;
    private readonly double _initialSpeed = initialSpeed;
    private readonly double _antilockEfficiency = antilockEfficiency ?? 0;
    private readonly List<StopSample>? _trace = trace;

    // Highest outlet that each valve of a line has reached; none in a line whose valves let go at once.
    private readonly double[]? _frontOutlets = car.Front.Brakes.LetsGoLate ? new double[car.Front.Brakes.Valves] : null;
    private readonly double[]? _rearOutlets = car.Rear.Brakes.LetsGoLate ? new double[car.Rear.Brakes.Valves] : null;

    public PressureCommand Command = command;

    public WheelState FrontState = WheelState.Rolling;
    public WheelState RearState = WheelState.Rolling;
    public readonly int Controlled => 6;

    public void Rates(double time, ReadOnlySpan<double> state, Span<double> rate, Span<double> decay)
    {
        Forces f = Solve(time, state);
        double v = state[Speed];
        rate[Speed] = -f.Deceleration;
        decay[Speed] = 0;
        rate[Distance] = v;
        rate[ResistanceEnergy] = f.ResistancePower;
        Axle(_car.Front, FrontState, f.Front, f.FrontReaction, f.Deceleration, f.FrontTorque, v, state[FrontSlip],
            out rate[FrontSlip], out decay[FrontSlip], out rate[FrontBrakeEnergy], out rate[FrontTyreEnergy], ref rate[ResistanceEnergy]);
        Axle(_car.Rear, RearState, f.Rear, f.RearReaction, f.Deceleration, f.RearTorque, v, state[RearSlip],
            out rate[RearSlip], out decay[RearSlip], out rate[RearBrakeEnergy], out rate[RearTyreEnergy], ref rate[ResistanceEnergy]);
        decay[Transfer] = 0;
        decay[TransferRate] = 0;
        rate[Transfer] = 0;
        rate[TransferRate] = 0;
        if (_car.Pitches)
        {
            double target = _car.HeightOverWheelbase * (f.Front + f.Rear + _car.External(v * v)) * TransferScale;
            rate[Transfer] = state[TransferRate];
            rate[TransferRate] = _car.PitchRate * _car.PitchRate * (target - state[Transfer]) - _car.PitchDamping * state[TransferRate];
            decay[TransferRate] = _car.PitchDamping;
        }

        decay[Sensed] = _car.SensingLag > 0 ? 1 / _car.SensingLag : 0;
        rate[Sensed] = decay[Sensed] * (f.RearReaction * TransferScale - state[Sensed]);
        decay[Distance..].Clear();
    }

    /// <summary>The state in which the foot touches the pedal of a car that keeps its speed.</summary>
    public readonly void Begin(Span<double> state)
    {
        state.Clear();
        state[Speed] = _initialSpeed;
        state[Sensed] = Math.Max(0, _car.Rear.Static - _car.Rear.Lift * _initialSpeed * _initialSpeed) * TransferScale;
    }

    /// <summary>The forces at an instant.</summary>
    public readonly Forces Solve(double time, ReadOnlySpan<double> state)
    {
        double v = state[Speed];
        double dynamic = v * v;
        double frontStatic = Math.Max(0, _car.Front.Static - _car.Front.Lift * dynamic);
        double rearStatic = Math.Max(0, _car.Rear.Static - _car.Rear.Lift * dynamic);
        double sprung = 0;
        double transfer = 0;
        if (_car.Pitches)
        {
            sprung = (state[Transfer] + _car.PitchDamping / (_car.PitchRate * _car.PitchRate) * state[TransferRate]) / TransferScale;
            transfer = Math.Clamp(sprung, -frontStatic, rearStatic);
        }

        double frontMu = Adhesion(_car.Front, FrontState, state[FrontSlip], frontStatic + transfer);
        double rearMu = Adhesion(_car.Rear, RearState, state[RearSlip], rearStatic - transfer);
        if (_car.InstantShare > 0)
        {
            transfer = _car.Transfer(frontMu, rearMu, frontStatic, rearStatic, dynamic, _car.InstantShare, sprung);
            double before = double.PositiveInfinity;
            for (int i = 0; _car.LoadDependent && i < LoadPasses && Math.Abs(transfer - before) > LoadTolerance * _car.Mass; i++)
            {
                before = transfer;
                transfer = Math.Clamp(transfer, -frontStatic, rearStatic);
                frontMu = Adhesion(_car.Front, FrontState, state[FrontSlip], frontStatic + transfer);
                rearMu = Adhesion(_car.Rear, RearState, state[RearSlip], rearStatic - transfer);
                transfer = _car.Transfer(frontMu, rearMu, frontStatic, rearStatic, dynamic, _car.InstantShare, sprung);
            }

            transfer = Math.Clamp(transfer, -frontStatic, rearStatic);
        }

        double pressure = Command.At(time);
        double resistance = _car.External(dynamic) + _car.GradeNewtons;
        double sensed = _car.SensingLag > 0 ? state[Sensed] / TransferScale : rearStatic - transfer;
        double front = frontMu * (frontStatic + transfer);
        double rear = rearMu * (rearStatic - transfer);
        return new Forces(
            (front + rear + resistance) / _car.Mass, front, rear, frontStatic + transfer, rearStatic - transfer,
            _car.Front.Brakes.NewtonMetres(pressure, sensed, _frontOutlets), _car.Rear.Brakes.NewtonMetres(pressure, sensed, _rearOutlets),
            resistance * v, pressure, sensed);
    }

    public readonly double LinePascals(Axle axle, in Forces forces) => axle == BrakeBalance.Axle.Front
        ? _car.Front.Brakes.LinePascals(forces.Pressure, forces.Sensed, _frontOutlets)
        : _car.Rear.Brakes.LinePascals(forces.Pressure, forces.Sensed, _rearOutlets);

    public readonly void Events(double time, ReadOnlySpan<double> state, Span<double> values)
    {
        values[Standstill] = state[Speed] - EndSpeed;
        values[At80Percent] = state[Speed] - 0.8 * _initialSpeed;
        values[At10Percent] = state[Speed] - 0.1 * _initialSpeed;
        Forces f = Solve(time, state);
        AxleEvents(_car.Front, FrontState, state[FrontSlip], f.Front, f.FrontReaction, f.FrontTorque, f.Deceleration,
            out values[FrontSaturates], out values[FrontReleases]);
        AxleEvents(_car.Rear, RearState, state[RearSlip], f.Rear, f.RearReaction, f.RearTorque, f.Deceleration, out values[RearSaturates],
            out values[RearReleases]);
    }

    public void Accepted(double time, ReadOnlySpan<double> state)
    {
        if (_frontOutlets is not null || _rearOutlets is not null)
        {
            Forces now = Solve(time, state);
            _car.Front.Brakes.Remember(now.Pressure, now.Sensed, _frontOutlets);
            _car.Rear.Brakes.Remember(now.Pressure, now.Sensed, _rearOutlets);
        }

        if (_trace is null || (_trace.Count > 0 && time < _trace[^1].TimeSeconds + 0.004))
        {
            return;
        }

        Forces f = Solve(time, state);
        Span<double> rate = stackalloc double[States], decay = stackalloc double[States];
        Rates(time, state, rate, decay);
        _trace.Add(new StopSample(
            TimeSeconds: time,
            SpeedMetresPerSecond: state[Speed],
            DistanceMetres: state[Distance],
            DecelerationMetresPerSecondSquared: f.Deceleration,
            LinePressurePascals: f.Pressure,
            Slip: new(state[FrontSlip], state[RearSlip]),
            NormalReactionNewtons: new(f.FrontReaction, f.RearReaction),
            BrakingForceNewtons: new(f.Front, f.Rear),
            BrakingTorqueNewtonMetres: new(f.FrontTorque, f.RearTorque),
            WheelRadiansPerSecondSquared: new(
                Spin(_car.Front, state[FrontSlip], rate[FrontSlip], state[Speed], rate[Speed]),
                Spin(_car.Rear, state[RearSlip], rate[RearSlip], state[Speed], rate[Speed])),
            Wheels: new(FrontState, RearState)));
    }

    private static double Spin(in AxleNumbers axle, double slip, double slipRate, double v, double acceleration) =>
        ((1 - slip) * acceleration - v * slipRate) / axle.Radius;

    private readonly double Adhesion(in AxleNumbers axle, WheelState wheels, double slip, double reaction)
    {
        double mu = axle.Mu(wheels == WheelState.Locked ? 1 : Math.Min(slip, 1), reaction);
        return wheels == WheelState.Regulated ? _antilockEfficiency * mu : mu;
    }

    private static void Axle(
        in AxleNumbers axle, WheelState wheels, double force, double reaction, double deceleration, double brakeTorque, double v,
            double slip,
        out double slipRate, out double decay, out double brakePower, out double tyrePower, ref double resistancePower)
    {
        tyrePower = force * slip * v;
        double omega = (1 - slip) * v / axle.Radius;
        decay = 0;
        slipRate = 0;
        switch (wheels)
        {
            case WheelState.Rolling:
                double torque = brakeTorque + axle.EngineTorque;
                slipRate = (-(1 - slip) * deceleration + axle.Radius / axle.Inertia * (torque - force * axle.Radius)) / v;
                double secant = Math.Abs(slip) > 1e-6 ? force / slip : axle.Mu(1e-6, reaction) * 1e6 * reaction;
                decay = Math.Max(0, axle.Radius * axle.Radius / axle.Inertia * secant / v);
                brakePower = brakeTorque * omega;
                resistancePower += axle.EngineTorque * omega;
                break;
            case WheelState.Regulated:
                double needed = force * axle.Radius + axle.Inertia * (1 - slip) / axle.Radius * deceleration;
                brakePower = (needed - axle.EngineTorque) * omega;
                resistancePower += axle.EngineTorque * omega;
                break;
            default:
                tyrePower = force * v;
                brakePower = 0;
                break;
        }
    }

    private readonly void AxleEvents(
        in AxleNumbers axle, WheelState wheels, double slip, double force, double reaction, double brakeTorque, double deceleration,
            out double lockUp, out double release)
    {
        double torque = brakeTorque + axle.EngineTorque;
        switch (wheels)
        {
            case WheelState.Rolling:
                double limit = _antilockEfficiency > 0 ? axle.Tyre.PeakSlipAt(Math.Max(1, 0.5 * reaction)) : 1;
                lockUp = limit - slip;
                release = 1;
                break;
            case WheelState.Regulated:
                lockUp = 1;
                release = torque - force * axle.Radius - axle.Inertia * (1 - slip) / axle.Radius * deceleration;
                break;
            default:
                lockUp = 1;
                release = torque - force * axle.Radius;
                break;
        }
    }

    /// <summary>Everything algebraic at an instant, in SI units.</summary>
    internal readonly record struct Forces(
        double Deceleration, double Front, double Rear, double FrontReaction, double RearReaction,
        double FrontTorque, double RearTorque, double ResistancePower, double Pressure, double Sensed);
}
