using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using MathNet.Numerics.Random;

namespace BrakeBalance.Teaching;

/// <summary>The invented car of one student's sheet, its numbers rounded as one would write them on a blackboard.</summary>
public sealed class ExerciseCar
{
    private ExerciseCar()
    {
    }

    /// <summary>The car as the assembly computes it: one load case, no losses.</summary>
    public required Vehicle Vehicle { get; init; }

    /// <summary>The only load case.</summary>
    public LoadCase LoadCase => Vehicle.LoadCases[0];

    /// <summary>The balance with its valve.</summary>
    public BalanceModel Balance => field ??= new(Vehicle, LoadCase);

    /// <summary>The balance without its valve: one fixed ratio.</summary>
    public BalanceModel WithoutValve =>
        field ??= new(Vehicle with { Hydraulics = Vehicle.Hydraulics.WithoutRearProportioning() }, LoadCase);

    /// <summary>The rear axle's share of the braking force without the valve [–].</summary>
    public double RearForceShare
    {
        get
        {
            PerAxle<Force> forces = WithoutValve.At(LinePressure).BrakingForces;
            return forces.Rear / (forces.Front + forces.Rear);
        }
    }

    /// <summary>The front axle's share of the weight at rest [–].</summary>
    public required double FrontShare { get; init; }

    /// <summary>A deceleration to work with [–].</summary>
    public required double BrakingRate { get; init; }

    /// <summary>An adhesion to work with [–].</summary>
    public required double Adhesion { get; init; }

    /// <summary>A line pressure to work with, above the knee, gauge.</summary>
    public required Pressure LinePressure { get; init; }

    /// <summary>The pedal, without losses.</summary>
    public required Pedal Pedal { get; init; }

    /// <summary>The booster.</summary>
    public required VacuumBooster Booster { get; init; }

    /// <summary>Bore of the tandem master cylinder.</summary>
    public required Length MasterBore { get; init; }

    /// <summary>The force on the pedal to work with.</summary>
    public required Force PedalForce { get; init; }

    /// <summary>Mass of one front disc.</summary>
    public required Mass DiscMass { get; init; }

    /// <summary>The speed to stop from.</summary>
    public required Speed Speed { get; init; }

    /// <summary>The front disc brake.</summary>
    public DiscBrake Front => (DiscBrake)Vehicle.Brakes.Front;

    /// <summary>The rear disc brake.</summary>
    public DiscBrake Rear => (DiscBrake)Vehicle.Brakes.Rear;

    /// <summary>The valve in the rear line.</summary>
    public ProportioningValve Valve => Vehicle.Hydraulics.RearProportioningValve!;

    /// <summary>Piston diameter of a front caliper: one piston a side.</summary>
    public Length FrontPiston => Front.Pistons.Diameters[0];

    /// <summary>Piston diameter of a rear caliper: one piston a side.</summary>
    public Length RearPiston => Rear.Pistons.Diameters[0];

    /// <summary>The closed forms of this car with a fixed share of the braking force.</summary>
    /// <param name="rearForceShare">The rear axle's share [–]; 0 to 1.</param>
    /// <returns>The closed forms.</returns>
    public FixedRatio WithShare(double rearForceShare) => new()
    {
        StaticRearShare = 1 - FrontShare,
        RearForceShare = rearForceShare,
        RelativeHeight = LoadCase.CentreOfGravityHeight / Vehicle.Wheelbase,
    };

    /// <summary>The car of a student.</summary>
    /// <param name="number">Class and student number.</param>
    /// <returns>
    /// The car; drawn again until its balance suits the exercises (front first at the adhesion, rear first at high rates without the
    /// valve).
    /// </returns>
    public static ExerciseCar For(ClassNumber number)
    {
        MersenneTwister numbers = number.Numbers(0);
        for (int i = 0; i < 10_000; i++)
        {
            ExerciseCar car = Draw(numbers);
            if (Suits(car))
            {
                return car;
            }
        }

        throw new InvalidOperationException("No car suits the exercises; the ranges they are drawn from are at fault.");
    }

    private static bool Suits(ExerciseCar car)
    {
        BalanceModel bare = car.WithoutValve;
        return bare.IdealCrossings() is [var crossing] && crossing.BrakingRate is > 0.35 and < 0.95
            && Math.Abs(crossing.BrakingRate - car.Adhesion) > 0.08
            && car.Balance.AtRate(0.9) is not null
            && car.LinePressure > car.Valve.Knee + Pressure.FromBars(8);
    }

    private static ExerciseCar Draw(MersenneTwister numbers)
    {
        double Pick(double low, double high, double step) =>
            Math.Round(low + step * numbers.Next((int)Math.Round((high - low) / step) + 1), 6);

        Length wheelbase = Length.FromMeters(Pick(2.30, 2.95, 0.05));
        double frontShare = Pick(0.48, 0.60, 0.01);
        Length tyre = Length.FromMillimeters(Pick(290, 330, 5));
        double friction = Pick(0.36, 0.46, 0.01);
        Pressure knee = Pressure.FromBars(Pick(20, 40, 1));
        var vehicle = new Vehicle
        {
            Name = "Invented exercise car",
            Note = "Invented for teaching; drawn by a class and a student number.",
            Wheelbase = wheelbase,
            LoadCases =
            [
                new LoadCase
                {
                    Name = "driver only",
                    Mass = Mass.FromKilograms(Pick(950, 1800, 10)),
                    FrontAxleToCentreOfGravity = wheelbase * (1 - frontShare),
                    CentreOfGravityHeight = Length.FromMeters(Pick(0.46, 0.60, 0.01)),
                },
            ],
            Tyres = new(new Tyre { LoadedRadius = tyre }, new Tyre { LoadedRadius = tyre }),
            Brakes = new(
                Disc(Pick(50, 64, 1), Pick(112, 132, 1), friction),
                Disc(Pick(34, 44, 1), Pick(108, 128, 1), friction)),
            Hydraulics = new BrakeHydraulics { RearValves = [new ProportioningValve { Knee = knee, Slope = Pick(0.25, 0.5, 0.05) }] },
        };
        return new ExerciseCar
        {
            Vehicle = vehicle,
            FrontShare = frontShare,
            BrakingRate = Pick(0.4, 0.8, 0.05),
            Adhesion = Pick(0.5, 0.9, 0.05),
            LinePressure = knee + Pressure.FromBars(Pick(10, 40, 1)),
            Pedal = new Pedal { Lever = new FixedRatioLever { Ratio = Pick(3.2, 4.5, 0.1) }, Efficiency = 1, FreePlay = Length.Zero },
            Booster = new VacuumBooster
            {
                Supply = new VacuumSupply { Vacuum = Pressure.FromKilopascals(Pick(45, 70, 1)) },
                DiaphragmDiameter = Length.FromMillimeters(Pick(200, 260, 5)),
                EffectiveAreaShare = 0.85,
                BoostRatio = Pick(3, 5, 0.5),
                CutInForce = Force.Zero,
            },
            MasterBore = Length.FromMillimeters(Pick(20, 26, 1)),
            PedalForce = Force.FromNewtons(Pick(150, 400, 10)),
            DiscMass = Mass.FromKilograms(Pick(5, 9, 0.5)),
            Speed = Speed.FromKilometersPerHour(Pick(80, 130, 10)),
        };
    }

    private static DiscBrake Disc(double pistonMillimetres, double radiusMillimetres, double friction) => new()
    {
        FrictionCoefficient = friction,
        Pistons = PistonSet.OneSide(Length.FromMillimeters(pistonMillimetres)),
        EffectiveRadius = Length.FromMillimeters(radiusMillimetres),
    };
}
