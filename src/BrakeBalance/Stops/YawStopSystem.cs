using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using BrakeBalance.Tyres;

namespace BrakeBalance.Stops;

/// <summary>Equations of a braking car with four wheels and combined slip.</summary>
/// <remarks>
/// <para>m (v_x′ − r v_y) = ΣX; m (v_y′ + r v_x) = ΣY; I_z r′ = Σ (x Y − y X) over the wheels at (x, y). The state of a
/// rolling wheel is the sliding speed of its contact patch over the car's speed, κ = (v_x,wheel − ω R)/v, whose stiff part lies on the
/// diagonal. Wheels in the order front left, front right, rear left, rear right.</para>
/// <para>Each axle's load stands half on each wheel; along the car the whole of T + R + D moves load. Left and right differ in adhesion and
/// in brake torque as the disturbance and the axle say.</para>
/// </remarks>
internal struct YawStopSystem : IStiffSystem
{
    public const int Vx = 0;
    public const int Vy = 1;
    public const int Yaw = 2;
    public const int Sliding = 3;
    public const int Along = 7;
    public const int Across = 8;
    public const int Heading = 9;
    public const int Path = 10;
    public const int Dissipated = 11;
    public const int States = 12;

    public const int Standstill = 0;
    public const int Stops = 1;
    public const int Releases = 5;
    public const int SquareToPath = 9;
    public const int SquareToRoad = 10;
    public const int Functions = 11;

    /// <summary>Speed in metres per second at which the equations end.</summary>
    public const double EndSpeed = 0.3;

    private readonly CarNumbers _car;
    private readonly PressureCommand _command;
    private readonly double _rightAdhesion;
    private readonly PerAxle<double> _rightTorque;
    private readonly double _crown;
    private readonly double _cos;
    private readonly double _sin;
    private readonly List<YawSample>? _trace;

    /// <summary>Turning sense of each wheel: 1 forwards, −1 backwards, 0 locked.</summary>
    public FourSenses Senses;
    public double GreatestSideslip;
    public double GreatestHeading;
    public double WidestWheel;
    public double GreatestMoment;

    public YawStopSystem(in CarNumbers car, in PressureCommand command, YawDisturbance disturbance, List<YawSample>? trace)
    {
        _car = car;
        _command = command;
        _rightAdhesion = 1 + 0.5 * disturbance.AdhesionImbalance;
        _rightTorque = new(RightOf(car.Front.Imbalance), RightOf(car.Rear.Imbalance));
        _crown = car.Mass * Gravity.StandardMetresPerSecondSquared * Math.Sin(disturbance.CrossSlope.Radians);
        (_sin, _cos) = Math.SinCos(disturbance.Steer.Radians);
        _trace = trace;
        for (int i = 0; i < 4; i++)
        {
            Senses[i] = 1;
        }

        // The stronger side brakes with T/(2 − |d|), the weaker with (1 − |d|) of that.
        static double RightOf(double imbalance) => imbalance >= 0 ? 2 / (2 - imbalance) : 2 * (1 + imbalance) / (2 + imbalance);
    }

    public readonly int Controlled => Along;

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
        double sum = 0;
        double moment = 0;
        for (int i = 0; i < 4; i++)
        {
            ref readonly AxleNumbers axle = ref AxleOf(i);
            WheelMotion w = m.Wheels[i];
            double arm = i < 2 ? _car.FrontArm : -_car.RearArm;
            double along = rate[Vx] - rate[Yaw] * Left(i);
            double acceleration = i < 2 ? along * _cos + (rate[Vy] + arm * rate[Yaw]) * _sin : along;
            double stiffness = w.Secant * w.Load / w.Reference;
            rate[Sliding + i] = Senses[i] == 0 ? 0
                : -y[Sliding + i] * slowing
                    + (acceleration + axle.Radius / (0.5 * axle.Inertia) * (w.WheelX * w.Load * axle.Radius + Senses[i] * w.Torque))
                        / reference;
            decay[Sliding + i] = Senses[i] == 0 ? 0 : axle.Radius * axle.Radius / (0.5 * axle.Inertia) * stiffness;
            sum += stiffness;
            moment += arm * arm * stiffness;
        }

        decay[Vx] = 0;
        decay[Vy] = 0.25 * sum / _car.Mass;
        decay[Yaw] = 0.25 * moment / _car.YawInertia;
        decay[Along..].Clear();
    }

    /// <summary>Velocity of a wheel's centre in its own plane.</summary>
    public readonly double WheelX(int wheel, ReadOnlySpan<double> y)
    {
        double along = y[Vx] - y[Yaw] * Left(wheel);
        return wheel < 2 ? along * _cos + (y[Vy] + _car.FrontArm * y[Yaw]) * _sin : along;
    }

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
        Motion motion = default;
        double transfer = 0;
        for (int k = 0; k < (_car.LoadDependent ? 3 : 1); k++)
        {
            double front = Math.Max(1, frontStatic + transfer);
            double rear = Math.Max(1, rearStatic - transfer);
            for (int i = 0; i < 4; i++)
            {
                motion.Wheels[i] = Wheel(i, y, 0.5 * (i < 2 ? front : rear), speed);
            }

            transfer = Math.Clamp(
                _car.StaticTransfer(
                    -0.5 * (motion.Wheels[0].BodyX + motion.Wheels[1].BodyX), -0.5 * (motion.Wheels[2].BodyX + motion.Wheels[3].BodyX),
                        frontStatic, rearStatic, dynamic),
                -frontStatic, rearStatic);
        }

        double resistance = _car.DragPerSpeedSquared * dynamic + _car.RollingNewtons + _car.GradeNewtons;
        double perSpeed = resistance / Math.Max(speed, EndSpeed);
        (double sin, double cos) = Math.SinCos(y[Heading]);
        double fx = -perSpeed * vx + _crown * sin;
        double fy = -perSpeed * vy + _crown * cos;

        // Heat of tyres and brakes and work on the surroundings: all that leaves the kinetic energy.
        double power = perSpeed * dynamic - _crown * (vx * sin + vy * cos);
        double moment = 0;
        double braking = 0;
        for (int i = 0; i < 4; i++)
        {
            WheelMotion w = motion.Wheels[i];
            bool isFront = i < 2;
            ref readonly AxleNumbers axle = ref AxleOf(i);
            double right = isFront ? _rightTorque.Front : _rightTorque.Rear;
            w.Load = Math.Max(0.5, 0.5 * (isFront ? frontStatic + transfer : rearStatic - transfer));
            w.Torque = 0.5 * (axle.Brakes.NewtonMetres(pressure, rearStatic - transfer) * (i % 2 == 1 ? right : 2 - right)
                + axle.EngineTorque);
            motion.Wheels[i] = w;
            fx += w.BodyX * w.Load;
            fy += w.BodyY * w.Load;
            braking -= Left(i) * w.BodyX * w.Load;
            moment += (isFront ? _car.FrontArm : -_car.RearArm) * w.BodyY * w.Load;
            power += -w.Load * (w.WheelX * w.SlidingX + w.WheelY * w.SlidingY) + Senses[i] * w.Torque * (w.AlongX - w.SlidingX)
                / axle.Radius;
        }

        motion.Ax = fx / _car.Mass;
        motion.Ay = fy / _car.Mass;
        motion.BrakingMoment = braking;
        motion.YawAcceleration = (moment + braking) / _car.YawInertia;
        motion.Speed = speed;
        motion.Power = power;
        return motion;
    }

    public readonly void Events(double time, ReadOnlySpan<double> y, Span<double> values)
    {
        Motion m = Solve(time, y);
        values[Standstill] = m.Speed - EndSpeed;
        values[SquareToPath] = y[Vx];
        values[SquareToRoad] = Math.PI / 2 - Math.Abs(y[Heading]);
        for (int i = 0; i < 4; i++)
        {
            WheelMotion w = m.Wheels[i];
            values[Stops + i] = Senses[i] == 0 ? 1 : Senses[i] * (w.AlongX / m.Speed - y[Sliding + i]);
            values[Releases + i] = Senses[i] == 0 ? w.Torque - Math.Abs(w.WheelX) * w.Load * AxleOf(i).Radius : 1;
        }
    }

    /// <summary>Kinetic energy of the car and its wheels.</summary>
    public readonly double Kinetic(ReadOnlySpan<double> y)
    {
        double wheels = 0;
        for (int i = 0; i < 4; i++)
        {
            double turning = Senses[i] == 0 ? 0 : (WheelX(i, y) - y[Sliding + i] * SpeedOf(y)) / AxleOf(i).Radius;
            wheels += 0.5 * AxleOf(i).Inertia * turning * turning;
        }

        return 0.5 * (_car.Mass * (y[Vx] * y[Vx] + y[Vy] * y[Vy]) + _car.YawInertia * y[Yaw] * y[Yaw] + wheels);
    }

    public void Accepted(double time, ReadOnlySpan<double> y)
    {
        double sideslip = Math.Atan2(y[Vy], y[Vx]);
        GreatestSideslip = Math.Max(GreatestSideslip, Math.Abs(sideslip));
        GreatestHeading = Math.Max(GreatestHeading, Math.Abs(y[Heading]));
        (double sin, double cos) = Math.SinCos(y[Heading]);
        for (int i = 0; i < 4; i++)
        {
            WidestWheel = Math.Max(WidestWheel, Math.Abs(y[Across] + (i < 2 ? _car.FrontArm : -_car.RearArm) * sin + Left(i) * cos));
        }

        Motion m = Solve(time, y);
        GreatestMoment = Math.Abs(m.BrakingMoment) > Math.Abs(GreatestMoment) ? m.BrakingMoment : GreatestMoment;
        if (_trace is null || (_trace.Count > 0 && time < _trace[^1].TimeSeconds + 0.015))
        {
            return;
        }

        _trace.Add(new YawSample(
            TimeSeconds: time,
            AlongMetres: y[Along],
            AcrossMetres: y[Across],
            HeadingRadians: y[Heading],
            YawRateRadiansPerSecond: y[Yaw],
            SpeedMetresPerSecond: m.Speed,
            DecelerationMetresPerSecondSquared: m.Speed > 0 ? -(m.Ax * y[Vx] + m.Ay * y[Vy]) / m.Speed : 0,
            BrakingMomentNewtonMetres: m.BrakingMoment,
            LongitudinalForceNewtons: new(m.Wheels[0].ForceX + m.Wheels[1].ForceX, m.Wheels[2].ForceX + m.Wheels[3].ForceX),
            Wheels: new(
                Locked(Axle.Front) ? WheelState.Locked : WheelState.Rolling, Locked(Axle.Rear) ? WheelState.Locked : WheelState.Rolling)));
    }

    /// <summary>Whether both wheels of an axle stand.</summary>
    public readonly bool Locked(Axle axle) => axle == Axle.Front ? Senses[0] == 0 && Senses[1] == 0 : Senses[2] == 0 && Senses[3] == 0;

    [UnscopedRef]
    internal readonly ref readonly AxleNumbers AxleOf(int wheel) => ref wheel < 2 ? ref _car.Front : ref _car.Rear;

    private readonly double Left(int wheel) => (wheel % 2 == 0 ? 0.5 : -0.5) * AxleOf(wheel).Track;

    private readonly WheelMotion Wheel(int wheel, ReadOnlySpan<double> y, double load, double carSpeed)
    {
        double along = y[Vx] - y[Yaw] * Left(wheel);
        double across = y[Vy] + (wheel < 2 ? _car.FrontArm : -_car.RearArm) * y[Yaw];
        (double cos, double sin) = wheel < 2 ? (_cos, _sin) : (1, 0);
        double wheelX = along * cos + across * sin;
        double wheelY = -along * sin + across * cos;
        double sliding = Senses[wheel] == 0 ? wheelX : y[Sliding + wheel] * carSpeed;
        double speed = Math.Sqrt(wheelX * wheelX + wheelY * wheelY);
        ref readonly AxleNumbers axle = ref AxleOf(wheel);
        CombinedSlip.PerNewton(axle.Tyre, axle.LateralWeight, sliding, wheelY, speed, load, out double x, out double lateral,
            out double secant);
        double factor = wheel % 2 == 1 ? _rightAdhesion : 2 - _rightAdhesion;
        x *= factor;
        lateral *= factor;
        return new WheelMotion
        {
            WheelX = x,
            WheelY = lateral,
            BodyX = x * cos - lateral * sin,
            BodyY = x * sin + lateral * cos,
            Secant = secant * factor,
            Reference = Math.Max(speed, CombinedSlip.SmallestReferenceSpeed),
            AlongX = wheelX,
            SlidingX = sliding,
            SlidingY = wheelY,
            Load = load,
        };
    }

    /// <summary>One wheel at an instant: force per newton of load in the wheel's and the car's axes, velocities of the wheel centre and of
    /// the contact patch, SI units.</summary>
    internal struct WheelMotion
    {
        public double WheelX;
        public double WheelY;
        public double BodyX;
        public double BodyY;
        public double Secant;
        public double Reference;
        public double AlongX;
        public double SlidingX;
        public double SlidingY;
        public double Load;
        public double Torque;

        public readonly double ForceX => BodyX * Load;
    }

    /// <summary>The car at an instant, SI units.</summary>
    internal struct Motion
    {
        public FourWheels Wheels;
        public double Ax;
        public double Ay;
        public double YawAcceleration;

        /// <summary>Moment about the vertical axis of unequal forces along the car left and right, leftwards positive.</summary>
        public double BrakingMoment;
        public double Speed;
        public double Power;
    }

    [InlineArray(4)]
    internal struct FourWheels
    {
        private WheelMotion _first;
    }

    [InlineArray(4)]
    internal struct FourSenses
    {
        private int _first;
    }
}
