using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;

namespace BrakeBalance.Bench;

/// <summary>What was measured on the bench for one job; parts that were not measured are empty or null.</summary>
public sealed record BenchSheet
{
    /// <summary>Name of the job.</summary>
    public required string Name { get; init; }

    /// <summary>What the reader should know of it.</summary>
    public string Note { get; init; } = "";

    /// <summary>Hose assemblies and what they have to stand.</summary>
    public ImmutableArray<HoseJob> Hoses { get; init; } = [];

    /// <summary>How hose is cut and sold.</summary>
    public HosePurchase Purchase { get; init; } = new();

    /// <summary>The plumbing.</summary>
    public PlumbingJob? Plumbing { get; init; }

    /// <summary>The push rod.</summary>
    public PushRodSheet? PushRod { get; init; }

    /// <summary>Old parts against new.</summary>
    public ChangePlan? Change { get; init; }
}

/// <summary>A hose assembly and what it has to stand.</summary>
/// <param name="Assembly">The assembly.</param>
/// <param name="Duty">What it has to stand.</param>
public sealed record HoseJob(HoseAssembly Assembly, HoseDuty Duty);

/// <summary>The plumbing and what flows in it.</summary>
/// <param name="Return">Graph, flow and oil.</param>
/// <param name="Release">Booster and master cylinder; null when they were not given.</param>
public sealed record PlumbingJob(ReturnFlow Return, ReleaseJob? Release);

/// <summary>What is let go when the foot comes off.</summary>
/// <param name="Booster">The booster.</param>
/// <param name="Master">The master cylinder.</param>
/// <param name="RodTravel">Travel of the rod.</param>
/// <param name="MakersLimit">Highest back-pressure that the booster's maker allows; null when not known.</param>
public sealed record ReleaseJob(HydraulicBooster Booster, MasterCylinder Master, Length RodTravel, Pressure? MakersLimit);
