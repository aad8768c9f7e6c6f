namespace BrakeBalance.Stops;

/// <summary>Equations of speed and of the temperatures of ring, hat and caliper of each axle's brakes.</summary>
/// <param name="car">The car.</param>
/// <param name="brakes">One wheel's brake of each axle.</param>
/// <param name="ambientCelsius">Temperature of the air.</param>
/// <param name="hottest">Takes the highest value of each state up to the last temperature, over all steps.</param>
/// <param name="trace">Takes samples; null for none.</param>
internal struct HeatSystem(in CarNumbers car, PerAxle<ThermalBrake> brakes, double ambientCelsius, double[] hottest,
    List<HeatSample>? trace) : IStiffSystem
{
    public const int Speed = 0;
    public const int FrontRing = 1;
    public const int FrontHat = 2;
    public const int FrontCaliper = 3;
    public const int RearRing = 4;
    public const int RearHat = 5;
    public const int RearCaliper = 6;
    public const int Distance = 7;
    public const int FrontHeat = 8;
    public const int RearHeat = 9;
    public const int Lost = 10;
    public const int States = 11;
    public const int Functions = 1;

    private const double StefanBoltzmann = 5.670374419e-8;
    private const double Kelvin = 273.15;
    private readonly CarNumbers _car = car;
    private readonly ThermalNumbers _front = new(brakes.Front);
    private readonly ThermalNumbers _rear = new(brakes.Rear);
    private readonly double _ambient = ambientCelsius;
    private readonly double _effectiveMass = car.Mass + car.Front.Inertia / (car.Front.Radius * car.Front.Radius)
            + car.Rear.Inertia / (car.Rear.Radius * car.Rear.Radius);
    private readonly double _engine = car.Front.EngineTorque / car.Front.Radius + car.Rear.EngineTorque / car.Rear.Radius;
    private readonly double[] _hottest = hottest;
    private readonly List<HeatSample>? _trace = trace;

    /// <summary>Change of speed wanted, or NaN while <see cref="Pressure"/> is held.</summary>
    public double Slope;

    /// <summary>Held line pressure in pascals.</summary>
    public double Pressure;

    /// <summary>Speed that ends the piece, or a negative number when time ends it.</summary>
    public double UntilSpeed;

    /// <summary>Shortest time between two samples while nothing brakes, in seconds.</summary>
    public double SampleApart = 1.5;

    public readonly int Controlled => 7;

    public readonly ThermalNumbers Front => _front;

    public readonly ThermalNumbers Rear => _rear;

    public void Rates(double time, ReadOnlySpan<double> y, Span<double> rate, Span<double> decay)
    {
        Power p = Solve(y);
        decay.Clear();
        rate[Speed] = p.Acceleration;
        rate[Distance] = y[Speed];
        rate[FrontHeat] = p.Front;
        rate[RearHeat] = p.Rear;
        double wind = y[Speed] > 0.01 ? Math.Pow(0.1 * y[Speed], 0.8) : 0;
        rate[Lost] = 2 * (Brake(_front, 0.5 * p.Front, wind, y.Slice(FrontRing, 3), rate.Slice(FrontRing, 3), decay.Slice(FrontRing, 3))
            + Brake(_rear, 0.5 * p.Rear, wind, y.Slice(RearRing, 3), rate.Slice(RearRing, 3), decay.Slice(RearRing, 3)));
    }

    /// <summary>Acceleration, line pressure and braking power of each axle.</summary>
    public readonly Power Solve(ReadOnlySpan<double> y)
    {
        double v = Math.Max(0, y[Speed]);
        double resistance = _car.DragPerSpeedSquared * v * v + _car.RollingNewtons + _car.GradeNewtons + _engine;
        double frontFade = _front.Fade.At(y[FrontRing]);
        double rearFade = _rear.Fade.At(y[RearRing]);
        double pressure = Pressure;
        double acceleration = Slope;
        if (!double.IsNaN(Slope))
        {
            double wanted = -_effectiveMass * Slope - resistance;
            pressure = wanted > 0 && Slope < 0 ? PressureFor(wanted, v * v, frontFade, rearFade) : 0;
        }

        SteadyBraking at = _car.Steady(pressure, v * v, frontFade, rearFade);
        double front = at.FrontTorque / _car.Front.Radius;
        double rear = at.RearTorque / _car.Rear.Radius;
        if (double.IsNaN(Slope))
        {
            acceleration = -(front + rear + resistance) / _effectiveMass;
        }

        return new Power(acceleration, pressure, front * v, rear * v);
    }

    /// <summary>The pressure at which the brakes give a force, or the highest that is tried.</summary>
    public readonly double PressureFor(double newtons, double speedSquared, double frontFade, double rearFade)
    {
        double high = 2 * Math.Max(_car.Front.Brakes.HighestPascals, _car.Rear.Brakes.HighestPascals);
        double atHigh = Force(high, speedSquared, frontFade, rearFade) - newtons;
        double low = 0;
        double atLow = -newtons;
        if (atHigh <= 0)
        {
            return high;
        }

        double guess = high;
        for (int i = 0; i < 60; i++)
        {
            guess = low + (high - low) * atLow / (atLow - atHigh);
            double at = Force(guess, speedSquared, frontFade, rearFade) - newtons;
            if (Math.Abs(at) < 1e-6 * newtons)
            {
                break;
            }

            if (at < 0)
            {
                low = guess;
                atLow = at;
                atHigh *= 0.5;
            }
            else
            {
                high = guess;
                atHigh = at;
                atLow *= 0.5;
            }
        }

        return guess;
    }

    public readonly void Events(double time, ReadOnlySpan<double> y, Span<double> values) =>
        values[0] = UntilSpeed < 0 ? 1 : Slope > 0 ? UntilSpeed - y[Speed] : y[Speed] - UntilSpeed;

    public void Accepted(double time, ReadOnlySpan<double> y)
    {
        for (int i = 0; i < _hottest.Length; i++)
        {
            _hottest[i] = Math.Max(_hottest[i], y[i]);
        }

        if (_trace is null)
        {
            return;
        }

        Power p = Solve(y);
        double apart = p.Front > 0 ? 0.2 : SampleApart;
        if (_trace.Count > 0 && time < _trace[^1].TimeSeconds + apart)
        {
            return;
        }

        Span<double> rate = stackalloc double[States], decay = stackalloc double[States];
        Rates(time, y, rate, decay);
        _trace.Add(new HeatSample(
            TimeSeconds: time,
            SpeedMetresPerSecond: y[Speed],
            BrakingPowerWatts: new(p.Front, p.Rear),
            RingCelsius: new(y[FrontRing], y[RearRing]),
            RingKelvinsPerSecond: new(rate[FrontRing], rate[RearRing]),
            HatCelsius: new(y[FrontHat], y[RearHat]),
            FluidCelsius: new(y[FrontCaliper], y[RearCaliper])));
    }

    private readonly double Force(double pascals, double speedSquared, double frontFade, double rearFade)
    {
        SteadyBraking at = _car.Steady(pascals, speedSquared, frontFade, rearFade);
        return at.FrontTorque / _car.Front.Radius + at.RearTorque / _car.Rear.Radius;
    }

    private readonly double Brake(in ThermalNumbers b, double power, double wind, ReadOnlySpan<double> t, Span<double> rate,
        Span<double> decay)
    {
        double convection = b.CoolingArea * (b.Still + b.PerWind * wind);
        double absolute = t[0] + Kelvin;
        double ambient = _ambient + Kelvin;
        double radiation = b.Radiation * StefanBoltzmann * (
            absolute * absolute * absolute * absolute - ambient * ambient * ambient * ambient);
        double caliperCooling = b.CaliperCooling * (1 + 3 * wind);
        double ringLoss = convection * (t[0] - _ambient) + radiation;
        double caliperLoss = caliperCooling * (t[2] - _ambient);
        double toHat = b.HatConductance * (t[0] - t[1]);
        double toCaliper = b.CaliperConductance * (t[0] - t[2]);
        rate[0] = (b.RingShare * power - ringLoss - toHat - toCaliper) / b.RingCapacity;
        decay[0] = (convection + 4 * b.Radiation * StefanBoltzmann * absolute * absolute * absolute + b.HatConductance
            + b.CaliperConductance) / b.RingCapacity;
        rate[1] = b.HatCapacity > 0 ? toHat / b.HatCapacity : rate[0];
        decay[1] = b.HatCapacity > 0 ? b.HatConductance / b.HatCapacity : decay[0];
        rate[2] = ((1 - b.RingShare) * power + toCaliper - caliperLoss) / b.CaliperCapacity;
        decay[2] = (b.CaliperConductance + caliperCooling) / b.CaliperCapacity;
        return ringLoss + caliperLoss;
    }

    /// <summary>What the brakes do at an instant, SI units, power of both brakes of an axle.</summary>
    internal readonly record struct Power(double Acceleration, double Pressure, double Front, double Rear);
}
