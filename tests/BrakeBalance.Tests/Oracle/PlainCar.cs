using System.Globalization;

namespace BrakeBalance.Tests.Oracle;

/// <summary>A car in plain numbers, all in SI units: metres, kilograms, newtons, pascals, metres per second.</summary>
/// <remarks>Nothing here comes from the library; <see cref="PlainCarReader"/> fills it in from what a user states about a car.</remarks>
internal sealed record PlainCar
{
    public const double Gravity = 9.80665;

    public required double Mass { get; init; }

    public required double Wheelbase { get; init; }

    public required double FrontAxleToCentreOfGravity { get; init; }

    public required double CentreOfGravityHeight { get; init; }

    public required PlainAxle Front { get; init; }

    public required PlainAxle Rear { get; init; }

    /// <summary>Whether a valve looks at the rear axle's load.</summary>
    public bool FeelsLoad => Front.FeelsLoad || Rear.FeelsLoad;

    /// <summary>Pressure that leaves the rear master cylinder over that which leaves the front one: 1 for a tandem cylinder.</summary>
    public required double RearToFrontMasterPressure { get; init; }

    public required double HighestPressure { get; init; }

    public double DragArea { get; init; }

    public double AirDensity { get; init; }

    /// <summary>Rolling resistance over the load on the wheels.</summary>
    public double RollingCoefficient { get; init; }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"""
        mass {Mass:0.#} kg, wheelbase {Wheelbase:0.####} m, centre of gravity {FrontAxleToCentreOfGravity:0.####} m behind the front axle
          and {CentreOfGravityHeight:0.####} m high
        rear/front master pressure {RearToFrontMasterPressure:0.####}, highest {HighestPressure / 1e5:0.##} bar
        drag area {DragArea:0.###} m2, air {AirDensity:0.####} kg/m3, rolling {RollingCoefficient:0.####}
        front: {Front}
        rear:  {Rear}
        """);
}

/// <summary>One axle of <see cref="PlainCar"/>.</summary>
internal sealed record PlainAxle
{
    public required double WheelRadius { get; init; }

    /// <summary>Torque of one brake per pascal above its threshold.</summary>
    public required double TorquePerPascal { get; init; }

    public double ThresholdPressure { get; init; }

    /// <summary>The valves that the fluid passes, in their order from the master cylinder.</summary>
    public PlainValve[] Valves { get; init; } = [];

    public bool FeelsLoad => Array.Exists(Valves, valve => valve is LoadSensing);

    public double AdhesionFactor { get; init; } = 1;

    /// <summary>Part of the adhesion lost when one wheel carries twice the reference load.</summary>
    public double LoadSensitivity { get; init; }

    public double ReferenceWheelLoad { get; init; } = 4000;

    /// <summary>Lift coefficient times area; negative presses the axle down.</summary>
    public double LiftArea { get; init; }

    public double EngineBrakingForce { get; init; }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"wheel {WheelRadius:0.####} m, {TorquePerPascal * 1e5:0.####} N m/bar above {ThresholdPressure / 1e5:0.###} bar, "
            + $"adhesion factor {AdhesionFactor:0.###}, "
            + $"load sensitivity {LoadSensitivity:0.####} at {ReferenceWheelLoad:0} N, lift area {LiftArea:0.###} m2, "
            + $"engine {EngineBrakingForce:0.#} N, valves [{string.Join(", ", Valves.Select(valve => valve.ToString()))}]");
}

/// <summary>A valve: what comes out for what goes in. The rear axle's load matters only to one kind.</summary>
internal abstract record PlainValve
{
    public abstract double Outlet(double inlet, double rearAxleLoad);
}

/// <summary>Passes everything up to the knee, and above it only a part of any further rise.</summary>
internal sealed record ProportioningAt(double Knee, double Slope) : PlainValve
{
    public override double Outlet(double inlet, double rearAxleLoad) => inlet < Knee ? inlet : Knee + (Slope * (inlet - Knee));

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"proportioning {Knee / 1e5:0.####} bar slope {Slope:0.####}");
}

/// <summary>Lets no more than its limit through.</summary>
internal sealed record LimitAt(double Limit) : PlainValve
{
    public override double Outlet(double inlet, double rearAxleLoad) => inlet < Limit ? inlet : Limit;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"limit {Limit / 1e5:0.####} bar");
}

/// <summary>Lets nothing through until it opens, then catches up in a straight line until the blend pressure.</summary>
internal sealed record MeteringBetween(double Opening, double Blend) : PlainValve
{
    public override double Outlet(double inlet, double rearAxleLoad)
    {
        if (inlet < Opening)
        {
            return 0;
        }

        return inlet > Blend ? inlet : Blend * (inlet - Opening) / (Blend - Opening);
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"metering {Opening / 1e5:0.####} to {Blend / 1e5:0.####} bar");
}

/// <summary>A proportioning valve whose knee goes up and down with the load on the rear axle.</summary>
internal sealed record LoadSensing(double KneeAtReference, double ReferenceLoad, double PascalsPerNewton, double Slope,
    double LowestKnee) : PlainValve
{
    public override double Outlet(double inlet, double rearAxleLoad)
    {
        double knee = KneeAtReference + (PascalsPerNewton * (rearAxleLoad - ReferenceLoad));
        if (knee < LowestKnee)
        {
            knee = LowestKnee;
        }

        return inlet < knee ? inlet : knee + (Slope * (inlet - knee));
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"load-sensing {KneeAtReference / 1e5:0.####} bar at {ReferenceLoad:0} N, "
            + $"{PascalsPerNewton / 100:0.####} bar/kN, slope {Slope:0.####}, lowest {LowestKnee / 1e5:0.##} bar");
}
