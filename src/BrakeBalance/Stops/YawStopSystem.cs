using BrakeBalance.Tyres;

namespace BrakeBalance.Stops;

/// <summary>Equations of a braking single-track car with combined slip.</summary>
/// <remarks>
/// <para>m (v_x′ − r v_y) = ΣX; m (v_y′ + r v_x) = ΣY; I_z r′ = a Y₁ − b Y₂ + M. The state of a rolling axle is the sliding speed of its contact patch over the car's speed, κ = (v_x,wheel − ω R)/v, whose stiff part lies on the diagonal.</para>
/// </remarks>
internal struct YawStopSystem : IStiffSystem
{
    public const int Vx = 0;
    public const int Vy = 1;
    public const int Yaw = 2;
    public const int FrontSliding = 3;
    public const int RearSliding = 4;
    public const int Along = 5;
    public const int Across = 6;
    public const int Heading = 7;
    public const int Path = 8;
    public const int Dissipated = 9;
    public const int States = 10;

    public const int Standstill = 0;
    public const int FrontStops = 1;
    public const int FrontReleases = 2;
    public const int RearStops = 3;
    public const int RearReleases = 4;
    public const int Sideways = 5;
    public const int Functions = 6;

    /// <summary>Speed in metres per second at which the equations end.</summary>
    public const double EndSpeed = 0.3;

    private readonly CarNumbers _car;
    private readonly PressureCommand _command;
    private readonly double _imbalance;
    private readonly double _crown;
    private readonly double _cos;
    private readonly double _sin;
    private readonly List<YawSample>? _trace;

    /// <summary>Turning sense of each axle's wheels: 1 forwards, −1 backwards, 0 locked.</summary>
    public int FrontSense = 1;
    public int RearSense = 1;
    public double GreatestSideslip;

    public YawStopSystem(in CarNumbers car, in PressureCommand command, YawDisturbance disturbance, List<YawSample>? trace)
    {
        _car = car;
        _command = command;
        _imbalance = disturbance.AdhesionImbalance;
        _crown = car.Mass * Gravity.StandardMetresPerSecondSquared * Math.Sin(disturbance.CrossSlope.Radians);
        (_sin, _cos) = Math.SinCos(disturbance.Steer.Radians);
        _trace = trace;
    }

    public readonly int Size => States;

    public readonly int Controlled => 5;

    public readonly int EventCount => Functions;

    public void Rates(double time, ReadOnlySpan<double> y, Span<double> rate, Span<double> decay)
    {
        Motion m = Solve(time, y);
        rate[Vx] = m.Ax + y[Yaw] * y[Vy];
        rate[Vy] = m.Ay - y[Yaw] * y[Vx];
        rate[Yaw] = m.YawAcceleration;
        (double sin, double cos) = Math.SinCos(y[Heading]);
        rate[Along] = y[Vx] * cos - y[Vy] * sin;
        rate[Across] = y[Vx] * sin + y[Vy] * cos;
        rate[Heading] = y[Yaw];
        rate[Path] = m.Speed;
        rate[Dissipated] = m.Power;
        double reference = Math.Max(m.Speed, 0.5 * EndSpeed);
        double slowing = (m.Ax * y[Vx] + m.Ay * y[Vy]) / (reference * reference);
        rate[FrontSliding] = FrontSense == 0 ? 0 : -y[FrontSliding] * slowing
            + Sliding(_car.Front, m.Front, FrontSense, rate[Vx] * _cos + (rate[Vy] + _car.FrontArm * rate[Yaw]) * _sin) / reference;
        rate[RearSliding] = RearSense == 0 ? 0 : -y[RearSliding] * slowing + Sliding(_car.Rear, m.Rear, RearSense, rate[Vx]) / reference;
        decay[FrontSliding] = FrontSense == 0 ? 0 : _car.Front.Radius * _car.Front.Radius / _car.Front.Inertia * m.Front.Secant * m.Front.Load / m.Front.Reference;
        decay[RearSliding] = RearSense == 0 ? 0 : _car.Rear.Radius * _car.Rear.Radius / _car.Rear.Inertia * m.Rear.Secant * m.Rear.Load / m.Rear.Reference;
        double front = m.Front.Secant * m.Front.Load / m.Front.Reference;
        double rear = m.Rear.Secant * m.Rear.Load / m.Rear.Reference;
        decay[Vx] = 0;
        decay[Vy] = 0.25 * (front + rear) / _car.Mass;
        decay[Yaw] = 0.25 * (_car.FrontArm * _car.FrontArm * front + _car.RearArm * _car.RearArm * rear) / _car.YawInertia;
        decay[Along..].Clear();
    }

    /// <summary>Velocity of the front wheels' centre in their own plane.</summary>
    public readonly double FrontWheelX(ReadOnlySpan<double> y) => y[Vx] * _cos + (y[Vy] + _car.FrontArm * y[Yaw]) * _sin;

    /// <summary>Speed of the centre of gravity.</summary>
    public static double SpeedOf(ReadOnlySpan<double> y) => Math.Sqrt(y[Vx] * y[Vx] + y[Vy] * y[Vy]);

    /// <summary>Forces and accelerations at an instant.</summary>
    public readonly Motion Solve(double time, ReadOnlySpan<double> y)
    {
        double vx = y[Vx];
        double vy = y[Vy];
        double speed = Math.Sqrt(vx * vx + vy * vy);
        double dynamic = speed * speed;
        double pressure = _command.At(time);
        double frontStatic = Math.Max(0, _car.Front.Static - _car.Front.Lift * dynamic);
        double rearStatic = Math.Max(0, _car.Rear.Static - _car.Rear.Lift * dynamic);
        double atFront = vy + _car.FrontArm * y[Yaw];
        double frontX = vx * _cos + atFront * _sin;
        double frontY = -vx * _sin + atFront * _cos;
        double rearY = vy - _car.RearArm * y[Yaw];
        double frontU = FrontSense == 0 ? frontX : y[FrontSliding] * speed;
        double rearU = RearSense == 0 ? vx : y[RearSliding] * speed;
        AxleMotion front = default;
        AxleMotion rear = default;
        double transfer = 0;
        for (int i = 0; i < (_car.LoadDependent ? 3 : 1); i++)
        {
            front = Axle(_car.Front, frontU, frontX, frontY, Math.Max(1, frontStatic + transfer), _cos, _sin);
            rear = Axle(_car.Rear, rearU, vx, rearY, Math.Max(1, rearStatic - transfer), 1, 0);
            transfer = Math.Clamp(_car.StaticTransfer(-front.BodyX, -rear.BodyX, frontStatic, rearStatic, dynamic), -frontStatic, rearStatic);
        }

        front = front with { Load = Math.Max(1, frontStatic + transfer), Torque = _car.Front.Brakes.NewtonMetres(pressure, rearStatic - transfer) + _car.Front.EngineTorque };
        rear = rear with { Load = Math.Max(1, rearStatic - transfer), Torque = _car.Rear.Brakes.NewtonMetres(pressure, rearStatic - transfer) + _car.Rear.EngineTorque };
        double resistance = _car.DragPerSpeedSquared * dynamic + _car.RollingNewtons + _car.GradeNewtons;
        double perSpeed = resistance / Math.Max(speed, EndSpeed);
        (double sin, double cos) = Math.SinCos(y[Heading]);
        double fx = front.BodyX * front.Load + rear.BodyX * rear.Load - perSpeed * vx + _crown * sin;
        double fy = front.BodyY * front.Load + rear.BodyY * rear.Load - perSpeed * vy + _crown * cos;
        double split = 0.25 * _imbalance * (_car.Front.Track * front.BodyX * front.Load + _car.Rear.Track * rear.BodyX * rear.Load);
        double moment = _car.FrontArm * front.BodyY * front.Load - _car.RearArm * rear.BodyY * rear.Load + split;

        // Heat of tyres and brakes and work on the surroundings: all that leaves the kinetic energy.
        double power = Heat(_car.Front, front, frontU, frontX, frontY, FrontSense) + Heat(_car.Rear, rear, rearU, vx, rearY, RearSense)
            + perSpeed * dynamic - _crown * (vx * sin + vy * cos) - split * y[Yaw];
        return new Motion(fx / _car.Mass, fy / _car.Mass, moment / _car.YawInertia, front, rear, speed, power);
    }

    public readonly void Events(double time, ReadOnlySpan<double> y, Span<double> values)
    {
        Motion m = Solve(time, y);
        values[Standstill] = m.Speed - EndSpeed;
        values[Sideways] = y[Vx];
        values[FrontStops] = FrontSense == 0 ? 1 : FrontSense * (FrontWheelX(y) / m.Speed - y[FrontSliding]);
        values[RearStops] = RearSense == 0 ? 1 : RearSense * (y[Vx] / m.Speed - y[RearSliding]);
        values[FrontReleases] = FrontSense == 0 ? m.Front.Torque - Math.Abs(m.Front.WheelX) * m.Front.Load * _car.Front.Radius : 1;
        values[RearReleases] = RearSense == 0 ? m.Rear.Torque - Math.Abs(m.Rear.WheelX) * m.Rear.Load * _car.Rear.Radius : 1;
    }

    public void Accepted(double time, ReadOnlySpan<double> y)
    {
        double sideslip = Math.Atan2(y[Vy], y[Vx]);
        GreatestSideslip = Math.Max(GreatestSideslip, Math.Abs(sideslip));
        if (_trace is null || (_trace.Count > 0 && time < _trace[^1].TimeSeconds + 0.015))
        {
            return;
        }

        Motion m = Solve(time, y);
        double vx = Math.Max(Math.Abs(y[Vx]), 0.1);
        _trace.Add(new YawSample
        {
            TimeSeconds = time,
            AlongMetres = y[Along],
            AcrossMetres = y[Across],
            HeadingRadians = y[Heading],
            YawRateRadiansPerSecond = y[Yaw],
            SpeedMetresPerSecond = m.Speed,
            SideslipRadians = sideslip,
            DecelerationMetresPerSecondSquared = m.Speed > 0 ? -(m.Ax * y[Vx] + m.Ay * y[Vy]) / m.Speed : 0,
            Slip = new(FrontSense == 0 ? 1 : y[FrontSliding] * m.Speed / vx, RearSense == 0 ? 1 : y[RearSliding] * m.Speed / vx),
            LongitudinalForceNewtons = new(m.Front.BodyX * m.Front.Load, m.Rear.BodyX * m.Rear.Load),
            LateralForceNewtons = new(m.Front.BodyY * m.Front.Load, m.Rear.BodyY * m.Rear.Load),
            Wheels = new(FrontSense == 0 ? WheelState.Locked : WheelState.Rolling, RearSense == 0 ? WheelState.Locked : WheelState.Rolling),
        });
    }

    private static AxleMotion Axle(in AxleNumbers axle, double sliding, double wheelX, double wheelY, double load, double cos, double sin)
    {
        double speed = Math.Sqrt(wheelX * wheelX + wheelY * wheelY);
        CombinedSlip.PerNewton(axle.Tyre, axle.LateralWeight, sliding, wheelY, speed, 0.5 * load, out double x, out double y, out double secant);
        return new AxleMotion(x, y, x * cos - y * sin, x * sin + y * cos, secant, Math.Max(speed, CombinedSlip.SmallestReferenceSpeed), load, 0);
    }

    private static double Sliding(in AxleNumbers axle, in AxleMotion m, int sense, double wheelAcceleration) =>
        wheelAcceleration + axle.Radius / axle.Inertia * (m.WheelX * m.Load * axle.Radius + sense * m.Torque);

    private static double Heat(in AxleNumbers axle, in AxleMotion m, double sliding, double wheelX, double wheelY, int sense) =>
        -m.Load * (m.WheelX * sliding + m.WheelY * wheelY) + sense * m.Torque * (wheelX - sliding) / axle.Radius;

    /// <summary>One axle at an instant: force per newton of load in the wheel's and the car's axes, SI units.</summary>
    internal readonly record struct AxleMotion(
        double WheelX, double WheelY, double BodyX, double BodyY, double Secant, double Reference, double Load, double Torque);

    /// <summary>The car at an instant, SI units.</summary>
    internal readonly record struct Motion(
        double Ax, double Ay, double YawAcceleration, AxleMotion Front, AxleMotion Rear, double Speed, double Power);
}
