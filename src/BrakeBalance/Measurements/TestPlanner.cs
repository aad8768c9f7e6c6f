using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>Makes a test plan for a car: from safe and slow to the stops that set the balance.</summary>
/// <remarks>
/// Order by common practice: least rear braking first, lightest load first (the rear lifts most), easy and firm stops without lock-up, then
/// to the first lock-up at the lowest speed that shows it, then the same with more load. A stop whose chance of a rear-first lock-up
/// exceeds the level of the car's conditions is left out.
/// </remarks>
public static class TestPlanner
{
    /// <summary>Makes the plan of a car that nothing was measured on yet.</summary>
    /// <param name="car">The car.</param>
    /// <param name="surfaces">Surfaces to test on.</param>
    public static TestPlan Make(Vehicle car, IReadOnlyList<string> surfaces) => Make(
        CarEstimation.Estimate(car, [],
            new EstimationOptions { Prior = ParameterSpread.From(car), Surfaces = [.. surfaces.Select(SurfaceCondition.Typical)] }),
        surfaces);

    /// <summary>Makes the plan.</summary>
    /// <param name="estimate">What is known so far; an estimate from no stops serves before the first.</param>
    /// <param name="surfaces">Surfaces to test on; null for those of the estimate, or dry and wet.</param>
    public static TestPlan Make(CarEstimate estimate, IReadOnlyList<string>? surfaces = null)
    {
        Vehicle vehicle = estimate.Model.Vehicle;
        string[] names = surfaces is { Count: > 0 }
            ? [.. surfaces] : estimate.Model.Surfaces.Count > 0 ? [.. estimate.Model.Surfaces.Select(s => s.Name)] : ["dry", "wet"];
        Refuse.If(names.Any(n => estimate.Model.Adhesion(estimate.Model.PriorMean, n) is null),
            $"The estimate knows the surfaces {string.Join(", ", estimate.Model.Surfaces.Select(s => s.Name))}; "
                + $"make it with all surfaces to be tested on ({string.Join(", ", names)}).", nameof(surfaces));

        KneeAdjustment? adjuster = vehicle.Hydraulics.RearProportioningValve?.Adjustment;
        double? turns = adjuster is null ? null : 0;
        BrakeHydraulics lines = adjuster is null ? vehicle.Hydraulics : vehicle.Hydraulics.WithRearKnee(adjuster.KneeBackedOff);
        List<PlannedStop> plan = [];
        foreach (LoadCase load in vehicle.LoadCases)
        {
            foreach (string surface in names)
            {
                double limit = NextTest.LockPressure(estimate, load.Name, surface, turns).Pascals;
                Pressure firm = At(0.75, limit);
                Pressure heldBack = lines.Split.RearToFrontPressureRatio * firm
                    - lines.LinePressures(firm, new BalanceModel(vehicle, load).StaticAxleLoads.Rear).Rear;
                (double Share, double Speed, string Purpose)[] ladder =
                [
                    (0.35, 30, "easy stop: warms the brakes, proves that the car pulls up straight"),
                    (0.55, 40, "firm stop without lock-up: friction of both axles together"),
                    (0.75, 50, heldBack.Bars > 0.1 ? "firm stop above the knee: friction of the rear against the front"
                        : "harder stop without lock-up: whether the friction of both axles stays what it was"),
                    (1.15, 40, "to the first lock-up, from the lowest speed that shows it"),
                    (1.15, 50, "the same again: lock-up scatters, one observation proves nothing"),
                ];
                foreach ((double share, double speed, string purpose) in ladder)
                {
                    var stop = new TestStop
                    {
                        LoadCase = load.Name,
                        Surface = surface,
                        FrontPressure = At(share, limit),
                        InitialSpeed = Speed.FromKilometersPerHour(speed),
                        Turns = turns,
                    };
                    StopOutlook judged = NextTest.Outlook(estimate, stop);
                    if (judged.RearFirst > NextTest.Level(estimate))
                    {
                        continue;
                    }

                    plan.Add(new PlannedStop(
                        Number: plan.Count + 1,
                        Purpose: purpose,
                        Speed: stop.InitialSpeed!.Value,
                        TargetPressure: stop.FrontPressure!.Value,
                        LoadCase: load.Name,
                        Surface: surface,
                        Turns: turns,
                        BrakingRate: judged.BrakingRate,
                        RearFirst: judged.RearFirst,
                        ToLockUp: share > 1));
                }
            }
        }

        return new TestPlan(vehicle.Name, plan, Cautions(vehicle, turns is not null));
    }

    private static Pressure At(double share, double limit) => Pressure.FromBars(Math.Round(share * limit / 1e5));

    private static List<string> Cautions(Vehicle vehicle, bool adjuster)
    {
        List<string> cautions =
        [
            "Closed ground only: level, straight, wide, empty, with permission; local law holds. "
                + "Competent people only; the car's service manual comes first.",
            "Helmet and belt; spotters well clear of the line and behind a barrier; a stop signal agreed; nothing to hit.",
            "Brakes bedded and at the same working temperature before each stop; tyre pressures equal; no leak, no pull, no warning light.",
            "Build the pressure over about a second, wheel straight, clutch in or neutral, the same every time.",
            "A rear axle that locks first spins the car: release at once, take rear braking out, and do not go faster.",
            "Never pass the lowest pressure rating of hose, fitting, caliper and gauge.",
        ];
        if (adjuster)
        {
            cautions.Insert(0, "Begin with the adjuster fully out (least rear braking). "
                + "Turn in by half a turn at most, and only after a clean repeat, or as far as the fit of the stops so far allows.");
        }

        if (vehicle.LoadCases.Length > 1)
        {
            string? binding = SettingSearch.Limit(vehicle, vehicle.Conditions).Binding?.LoadCase;
            cautions.Add((binding is null ? "" : $"In load case {binding} the rear locks first most easily. ")
                + "More load is proved last.");
        }

        return cautions;
    }
}
