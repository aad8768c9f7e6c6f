using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;

namespace BrakeBalance.Vehicles;

/// <summary>A two-axle car as far as its braking is concerned.</summary>
/// <remarks>
/// Both wheels of an axle are alike. A vehicle read from a file is consistent; one built in code is checked when its balance is
/// computed.
/// </remarks>
public sealed record Vehicle
{
    /// <summary>Name of the car.</summary>
    public required string Name { get; init; }

    /// <summary>The name as a sentence takes it: "the Track coupe", but "My coupe" and "Elsa's estate".</summary>
    public string InText => Name.Split(' ')[0] is "My" or "Our" or "The" or [.., '\'' or '’', 's'] ? Name : "the " + Name;

    /// <summary>What the reader should know of it, such as that it is invented.</summary>
    public string Note { get; init; } = "";

    /// <summary>Whether the car is made up: its file says so.</summary>
    public bool IsInvented { get; init; }

    /// <summary>Distance between the axles (E); above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length Wheelbase { get; init => field = Require.Positive(value); }

    /// <summary>States of load, lightest first by habit; at least one.</summary>
    public required ImmutableArray<LoadCase> LoadCases { get; init; }

    /// <summary>Tyres of each axle.</summary>
    public required PerAxle<Tyre> Tyres { get; init; }

    /// <summary>The brake of one wheel of each axle.</summary>
    public required PerAxle<Brake> Brakes { get; init; }

    /// <summary>Circuit split and valves.</summary>
    public BrakeHydraulics Hydraulics { get; init; } = new();

    /// <summary>Pedal, assist and master cylinder; null when they are not known, and then no pedal force is told.</summary>
    public BrakeControl? Control { get; init; }

    /// <summary>Aerodynamics; null when they are left out.</summary>
    public Aerodynamics? Aerodynamics { get; init; }

    /// <summary>Rolling resistance over normal reaction [–]; 0 to 0.1; 0 unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.1.</exception>
    public double RollingResistanceCoefficient { get; init => field = Require.Between(value, 0, 0.1); }

    /// <summary>What the course of a stop needs beyond the balance; null when nothing of it is known.</summary>
    public VehicleDynamics? Dynamics { get; init; }

    /// <summary>Wheels, slip and heat of each axle, as far as they are known.</summary>
    public PerAxle<AxleDynamics> AxleDynamics { get; init; } = new(new(), new());

    /// <summary>What answers about the setting have to hold for.</summary>
    public Conditions Conditions { get; init; } = new();

    /// <summary>What its file leaves uncertain; null when every number is a point.</summary>
    public VehicleUncertainty? Uncertainty { get; init; }

    /// <summary>What was measured on the car itself; null when nothing was, or its logs were not read.</summary>
    public IOwnMeasurements? Measured { get; init; }

    /// <summary>Engine braking; null for a declutched stop.</summary>
    public EngineBraking? EngineBraking { get; init; }

    /// <summary>The load case of a name.</summary>
    /// <param name="name">The name, capitals or not.</param>
    /// <returns>That load case.</returns>
    /// <exception cref="ArgumentException">There is none of that name; the message lists those there are.</exception>
    public LoadCase LoadCase(string name) =>
        LoadCases.FirstOrDefault(load => string.Equals(load.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentException(
            $"There is no load case \"{name}\". The car has: {LoadCaseNames}.", nameof(name));

    /// <summary>The names of the load cases for a sentence, in quotation marks, as a name can hold a comma.</summary>
    internal string LoadCaseNames => string.Join(", ", LoadCases.Select(load => $"\"{load.Name}\""));

    /// <summary>The same car with another knee (and slope) in the rear line.</summary>
    /// <param name="knee">The knee, gauge; not negative.</param>
    /// <param name="slope">The slope above it [–]; null keeps the present slope.</param>
    /// <exception cref="ArgumentException">There is no proportioning valve and no slope is given.</exception>
    public Vehicle WithRearKnee(Pressure knee, double? slope = null) => this with { Hydraulics = Hydraulics.WithRearKnee(knee, slope) };

    /// <summary>The same car with its balance bar set otherwise.</summary>
    /// <param name="share">The front cylinder's share of the rod force [–]; 0.2 to 0.8.</param>
    /// <exception cref="InvalidOperationException">The car has no balance bar.</exception>
    public Vehicle WithFrontForceShare(double share) => Hydraulics.Split is BalanceBarSplit bar
        ? this with { Hydraulics = Hydraulics with { Split = bar with { FrontForceShare = share } } }
        : throw new InvalidOperationException($"\"{Name}\" has no balance bar.");

    /// <summary>The same car with pads or linings of other friction.</summary>
    /// <param name="front">Factor on the front brakes' friction [–]; above zero.</param>
    /// <param name="rear">Factor on the rear brakes' friction [–]; above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A factor is not above zero.</exception>
    /// <remarks>
    /// Friction rises at most to what <see cref="Brakes.Brake.GreatestFriction"/> says: a shoe that locks by itself has no brake factor.
    /// </remarks>
    public Vehicle WithFrictionFactors(double front, double rear) => this with
    {
        Brakes = new(
            front == 1 ? Brakes.Front : Brakes.Front.WithFrictionFactor(front),
            rear == 1 ? Brakes.Rear : Brakes.Rear.WithFrictionFactor(rear)),
    };
}
