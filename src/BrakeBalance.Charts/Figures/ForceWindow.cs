using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Figures;

/// <summary>How far the axes of a brake-force figure reach; shared by figures that are to be compared.</summary>
/// <param name="Front">Upper end of the front axle's force.</param>
/// <param name="Rear">Upper end of the rear axle's force.</param>
public sealed record ForceWindow(Force Front, Force Rear)
{
    /// <summary>A window that shows the ideal curves of some cars up to the rate that a surface allows.</summary>
    /// <param name="models">The cars, or one car in several load cases or settings.</param>
    /// <param name="adhesion">The grippiest surface to show [–].</param>
    public static ForceWindow Of(IEnumerable<BalanceModel> models, double adhesion)
    {
        double front = 0, rear = 0;
        foreach (BalanceModel model in models)
        {
            double top = Math.Min(model.GreatestRate(adhesion) * 1.1, model.RearLiftOffRate);
            var ideal = Enumerable.Range(1, 40).Select(i => model.IdealForces(top * i / 40)).ToList();
            front = Math.Max(front, ideal.Max(forces => forces.Front.Newtons));
            rear = Math.Max(rear, ideal.Max(forces => forces.Rear.Newtons) * 1.5);
        }

        return new(Force.FromNewtons(front), Force.FromNewtons(rear));
    }

    internal static ForceWindow Of(BalanceModel model, IReadOnlyList<double> adhesions) =>
        Of([model], Math.Max(Finding.Highest(model.Vehicle), adhesions.Max()));

    /// <summary>The deceleration at which a car's installed line leaves the window, or ends: as far as a title of it can speak.</summary>
    internal double RateShown(BalanceModel model)
    {
        double front = Rounded().Front;
        List<BalancePoint> line = [.. InstalledLine.Of(model)];
        int beyond = line.FindIndex(point => point.BrakingForces.Front.Newtons > front);
        if (beyond < 1)
        {
            return line[^1].BrakingRate;
        }

        (BalancePoint last, BalancePoint next) = (line[beyond - 1], line[beyond]);
        double share = (front - last.BrakingForces.Front.Newtons) / (next.BrakingForces.Front - last.BrakingForces.Front).Newtons;
        return last.BrakingRate + share * (next.BrakingRate - last.BrakingRate);
    }

    /// <summary>The window with its ends at round newtons: as far in either system of units, so that a finding holds in both.</summary>
    internal (double Front, double Rear) Rounded()
    {
        DisplayUnit unit = Measure.BrakeForce.In(UnitSystem.Si);
        return (Up(Front.Newtons, unit), Up(Rear.Newtons, unit));
    }

    /// <summary>An end of an axis from zero, in SI, raised to a round display number.</summary>
    internal static double Up(double end, DisplayUnit unit) => unit.ToSi(Ticks.Fit(0, unit.FromSi(end), 7).High);
}
