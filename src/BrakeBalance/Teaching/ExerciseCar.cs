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
public sealed record ExerciseCar
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
    public double BrakingRate { get; private init; }

    /// <summary>An adhesion to work with [–].</summary>
    public double Adhesion { get; private init; }

    /// <summary>Another adhesion, for a second look at which axle locks first [–].</summary>
    public double OtherAdhesion { get; private init; }

    /// <summary>An adhesion at which the rear axle would lock first without the valve [–].</summary>
    public double DryAdhesion { get; private init; }

    /// <summary>A share of the weight to which braking takes the rear axle [–].</summary>
    public double LightRearShare { get; private init; }

    /// <summary>A line pressure to work with, above or below the knee, gauge.</summary>
    public Pressure LinePressure { get; private init; }

    /// <summary>The pedal, without losses.</summary>
    public required Pedal Pedal { get; init; }

    /// <summary>The booster.</summary>
    public required VacuumBooster Booster { get; init; }

    /// <summary>Bore of the tandem master cylinder.</summary>
    public required Length MasterBore { get; init; }

    /// <summary>The force on the pedal to work with.</summary>
    public Force PedalForce { get; private init; }

    /// <summary>Mass of one front disc.</summary>
    public required Mass DiscMass { get; init; }

    /// <summary>The speed to stop from.</summary>
    public Speed Speed { get; private init; }

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
    public FixedRatio WithShare(double rearForceShare) => new()
    {
        StaticRearShare = 1 - FrontShare,
        RearForceShare = rearForceShare,
        RelativeHeight = LoadCase.CentreOfGravityHeight / Vehicle.Wheelbase,
    };

    /// <summary>The car of a student.</summary>
    /// <param name="number">Class and student number.</param>
    /// <returns>The car; drawn again until it is ordinary and its balance suits the exercises.</returns>
    public static ExerciseCar For(ClassNumber number)
    {
        MersenneTwister car = number.OfCar, tasks = number.OfTasks;
        ExerciseCar drawn = Suiting(() => Draw(car), IsOrdinary);
        return Suiting(() => drawn.WithTasks(tasks), Suits);
    }

    private static ExerciseCar Suiting(Func<ExerciseCar> draw, Func<ExerciseCar, bool> suits)
    {
        for (int i = 0; i < 10_000; i++)
        {
            if (draw() is var car && suits(car))
            {
                return car;
            }
        }

        throw new InvalidOperationException("No car suits the exercises; the ranges they are drawn from are at fault.");
    }

    private static bool Apart(Pressure one, Pressure other) => Math.Abs((one - other).Bars) >= 4;

    // No answer that hangs on a hair, nothing that no road, foot or booster gives.
    private static bool IsOrdinary(ExerciseCar car)
    {
        Area bore = Area.FromCircleDiameter(car.MasterBore);
        Pressure unassisted = car.Pedal.InputRodForce(Force.FromNewtons(500)) / bore;
        return car.FrontPiston.Millimeters is >= 42 and <= 64 && car.RearPiston.Millimeters is >= 28 and <= 48
            && car.RearPiston / car.FrontPiston is > 0.5 and < 1
            && Apart(unassisted, car.Valve.Knee)
            && car.Booster.OutputForce(car.Pedal.InputRodForce(Force.FromNewtons(200))) / bore < Pressure.FromBars(110)
            && car.WithoutValve.IdealCrossings() is [{ BrakingRate: > 0.4 and < 0.85 and var crossing }]
            && DryRoads.Any(road => IsDry(car, crossing, road))
            && car.Balance.AtRate(0.9) is not null
            && car.Balance.At(car.Valve.Knee).BrakingRate is > 0.2 and < 0.7 && car.Balance.At(unassisted).BrakingRate < 0.6;
    }

    private static readonly double[] DryRoads = [0.75, 0.8, 0.85, 0.9, 0.95, 1];

    private static bool IsDry(ExerciseCar car, double crossing, double road) =>
        road > crossing + 0.1 && car.KneeAt(road).Bars is > 10 and < 60;

    private static bool Suits(ExerciseCar car)
    {
        Area bore = Area.FromCircleDiameter(car.MasterBore);
        double crossing = car.WithoutValve.IdealCrossings()[0].BrakingRate;
        return Apart(car.LinePressure, car.Valve.Knee)
            && car.Pedal.PedalForce(car.LinePressure * bore).Newtons < 1000
            && car.Booster.OutputForce(car.Pedal.InputRodForce(car.PedalForce)) / bore < Pressure.FromBars(110)
            && Math.Abs(crossing - car.Adhesion) > 0.08 && Math.Abs(crossing - car.OtherAdhesion) > 0.08
            && car.OtherAdhesion != car.Adhesion && IsDry(car, crossing, car.DryAdhesion)
            && car.Balance.At(car.LinePressure).BrakingRate < 0.95
            && AsksForMore(car);
    }

    // No question that the number given in it answers.
    private static bool AsksForMore(ExerciseCar car)
    {
        PerAxle<double?> used = car.WithoutValve.AtRate(car.BrakingRate)!.AdhesionUtilisation;
        return Differ(used.Front!.Value, car.BrakingRate) && Differ(used.Rear!.Value, car.BrakingRate)
            && Differ(car.WithShare(car.RearForceShare).RearLockRate(car.Adhesion), car.Adhesion)
            && Differ(car.WithoutValve.FirstLockUp(car.OtherAdhesion)!.At.BrakingRate, car.OtherAdhesion);

        static bool Differ(double answer, double given) => Math.Abs(answer - given) > 1.5 * ExerciseAnswer.Slack(true, answer);
    }

    /// <summary>The knee that makes both axles lock together on a road, the slope as it is.</summary>
    /// <param name="adhesion">The road's adhesion [–]; above the crossing without the valve.</param>
    /// <returns>The knee, gauge.</returns>
    internal Pressure KneeAt(double adhesion)
    {
        (Pressure front, Pressure rear) = PressuresAt(adhesion);
        return (rear - (front * Valve.Slope)) / (1 - Valve.Slope);
    }

    /// <summary>The pressures in the front and the rear line at which both axles lock together on a road.</summary>
    /// <param name="adhesion">The road's adhesion [–].</param>
    /// <returns>The pressures, gauge.</returns>
    internal (Pressure Front, Pressure Rear) PressuresAt(double adhesion)
    {
        PerAxle<Force> limits = WithoutValve.IdealForces(adhesion), one = WithoutValve.At(Pressure.FromBars(10)).BrakingForces;
        return (Pressure.FromBars(10 * (limits.Front / one.Front)), Pressure.FromBars(10 * (limits.Rear / one.Rear)));
    }

    private static double Pick(MersenneTwister numbers, double low, double high, double step) =>
        Math.Round(low + step * numbers.Next((int)Math.Round((high - low) / step) + 1), 6);

    private ExerciseCar WithTasks(MersenneTwister numbers)
    {
        double Pick(double low, double high, double step) => ExerciseCar.Pick(numbers, low, high, step);
        return this with
        {
            BrakingRate = Pick(0.4, 0.8, 0.05),
            Adhesion = Pick(0.3, 0.95, 0.05),
            OtherAdhesion = Pick(0.3, 0.95, 0.05),
            DryAdhesion = Pick(DryRoads[0], DryRoads[^1], 0.05),
            LightRearShare = Math.Round(
                1 - FrontShare - Pick(0.5, 0.9, 0.05) * (LoadCase.CentreOfGravityHeight / Vehicle.Wheelbase), 2),
            LinePressure = Pressure.FromBars(Pick(12, 60, 1)),
            PedalForce = Force.FromNewtons(Pick(100, 300, 10)),
            Speed = Speed.FromKilometersPerHour(Pick(80, 130, 10)),
        };
    }

    private static ExerciseCar Draw(MersenneTwister numbers)
    {
        double Pick(double low, double high, double step) => ExerciseCar.Pick(numbers, low, high, step);

        // A long car is heavier and its centre of gravity higher; some carry more on the rear axle, none nearly the same.
        double wheelbase = Pick(2.30, 2.90, 0.05), height = Math.Round(wheelbase * Pick(0.17, 0.23, 0.01), 2);
        double frontShare = numbers.Next(2) == 0 ? Pick(0.42, 0.47, 0.01) : Pick(0.53, 0.62, 0.01);
        double mass = Math.Round(1000 * (wheelbase - 2.30) + Pick(950, 1200, 10));
        double tyre = Pick(290, 330, 5), friction = Pick(0.36, 0.46, 0.01), front = Pick(112, 132, 1), rear = Pick(108, 128, 1);

        // Pistons to give 1 g at 75 to 95 bar in both lines, and the same adhesion used by both axles at a deceleration in reach.
        double share = 1 - frontShare - Pick(0.40, 0.86, 0.02) * height / wheelbase;
        double frontArea = (1 - share) * Pick(0.105, 0.135, 0.005) * 1e-6 * mass * Gravity.StandardMetresPerSecondSquared * tyre
            / (4 * friction * front);
        double frontPiston = Math.Round(1000 * Math.Sqrt(4 / Math.PI * frontArea));
        double rearPiston = Math.Round(frontPiston * Math.Sqrt(share / (1 - share) * front / rear));
        Pressure knee = Pressure.FromBars(Pick(24, 50, 1));
        return new ExerciseCar
        {
            Vehicle = new Vehicle
            {
                Name = "Invented exercise car",
                Note = "Invented for teaching; drawn by a class and a student number.",
                Wheelbase = Length.FromMeters(wheelbase),
                LoadCases =
                [
                    new LoadCase
                    {
                        Name = "driver only",
                        Mass = Mass.FromKilograms(mass),
                        FrontAxleToCentreOfGravity = Length.FromMeters(wheelbase * (1 - frontShare)),
                        CentreOfGravityHeight = Length.FromMeters(height),
                    },
                ],
                Tyres = new(Tyre(tyre), Tyre(tyre)),
                Brakes = new(Disc(frontPiston, front, friction), Disc(rearPiston, rear, friction)),
                Hydraulics = new BrakeHydraulics { RearValves = [new ProportioningValve { Knee = knee, Slope = Pick(0.25, 0.5, 0.05) }] },
            },
            FrontShare = frontShare,
            Pedal = new Pedal { Lever = new FixedRatioLever { Ratio = Pick(3, 4, 0.1) }, Efficiency = 1, FreePlay = Length.Zero },
            Booster = new VacuumBooster
            {
                Supply = new VacuumSupply { Vacuum = Pressure.FromKilopascals(Pick(55, 75, 1)) },
                DiaphragmDiameter = Length.FromMillimeters(Pick(205, 270, 5)),
                EffectiveAreaShare = 0.85,
                BoostRatio = Pick(3, 5, 0.5),
                CutInForce = Force.Zero,
            },
            MasterBore = Length.FromMillimeters(Pick(22, 26, 1)),
            DiscMass = Mass.FromKilograms(Math.Round(mass * 0.01) / 2 + Pick(-1, 1, 0.5)),
        };
    }

    private static Tyre Tyre(double radiusMillimetres) => new() { LoadedRadius = Length.FromMillimeters(radiusMillimetres) };

    private static DiscBrake Disc(double pistonMillimetres, double radiusMillimetres, double friction) => new()
    {
        FrictionCoefficient = friction,
        Pistons = PistonSet.OneSide(Length.FromMillimeters(pistonMillimetres)),
        EffectiveRadius = Length.FromMillimeters(radiusMillimetres),
    };
}
