using System.Collections.Immutable;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace BrakeBalance.Tests.Oracle;

/// <summary>A valve that is there and does nothing, at any pressure that the car can have.</summary>
/// <param name="Valve">The valve.</param>
/// <param name="InFront">In the front line, otherwise in the rear line.</param>
/// <param name="Place">Where among the valves of the line: 0 first, 1 last.</param>
public sealed record InertPart(PressureValve Valve, bool InFront, double Place)
{
    /// <summary>More than any pressure in the cars of <see cref="AnyCase"/>, whatever the split.</summary>
    private const double NeverReachedBars = 700;

    /// <summary>Whether the valve would be taken for the one that is to be set.</summary>
    public bool MayBeSet => Valve is ProportioningValve;

    /// <summary>Found by FsCheck by its return type.</summary>
    public static Arbitrary<InertPart> Parts() => (
        from valve in Gen.OneOf(
            Gen.Constant<PressureValve>(new LimitingValve { Limit = Pressure.FromBars(NeverReachedBars) }),
            Gen.Choose(0, 100).Select(n => (PressureValve)new ProportioningValve
            {
                Knee = Pressure.FromBars(NeverReachedBars),
                Slope = n / 100.0
            }),
            Gen.Choose(0, 120).Select(n => (PressureValve)new ProportioningValve { Knee = Pressure.FromBars(n), Slope = 1 }),
            Gen.Choose(0, 100).Select(n => Feeling(NeverReachedBars, n / 100.0)),
            Gen.Choose(0, 120).Select(n => Feeling(n, 1)),
            Gen.Choose(1, 30).Select(n => (PressureValve)new MeteringValve
            {
                OpeningPressure = Pressure.Zero,
                BlendPressure = Pressure.FromBars(n)
            }))
        from inFront in Gen.Elements(true, false, false)
        from place in Gen.Choose(0, 10)
        select new InertPart(valve, inFront, place / 10.0)).ToArbitrary();

    /// <summary>The car with the part fitted; never before the valve that is to be set.</summary>
    public Vehicle FitTo(Vehicle car)
    {
        BrakeHydraulics hydraulics = car.Hydraulics;
        return car with
        {
            Hydraulics = InFront
                ? hydraulics with { FrontValves = Into(hydraulics.FrontValves) }
                : hydraulics with { RearValves = Into(hydraulics.RearValves) },
        };
    }

    private ImmutableArray<PressureValve> Into(ImmutableArray<PressureValve> valves)
    {
        int first = MayBeSet ? valves.TakeWhile(valve => valve is not ProportioningValve).Count() + 1 : 0;
        int place = (int)Math.Round(Place * valves.Length);
        return valves.Insert(Math.Min(valves.Length, Math.Max(first, place)), Valve);
    }

    private static PressureValve Feeling(double lowestBars, double slope) => new LoadSensingValve
    {
        KneeAtReference = Pressure.FromBars(10),
        ReferenceLoad = Force.FromKilonewtons(5),
        KneePerKilonewton = Pressure.FromBars(5),
        LowestKnee = Pressure.FromBars(lowestBars),
        Slope = slope,
    };
}
