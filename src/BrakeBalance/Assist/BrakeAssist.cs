namespace BrakeBalance.Assist;

/// <summary>What stands between the pedal's rod and the master cylinder's rod and may add force of its own.</summary>
/// <seealso cref="NoAssist"/>
/// <seealso cref="VacuumBooster"/>
/// <seealso cref="HydraulicBooster"/>
public abstract record BrakeAssist
{
    private protected BrakeAssist()
    {
    }

    /// <summary>Where the assist can give no more; null when there is no assist to run out.</summary>
    public abstract RunOut? RunOut { get; }

    /// <summary>Force on the master cylinder's rod.</summary>
    /// <param name="inputForce">Force on the input rod from the pedal; not negative.</param>
    /// <returns>Force on the output rod; never lower for a higher input.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="inputForce"/> is negative.</exception>
    public abstract Force OutputForce(Force inputForce);

    /// <summary>The smallest input that gives at least an output.</summary>
    /// <param name="outputForce">Force wanted on the output rod; not negative.</param>
    /// <returns>Force needed on the input rod.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="outputForce"/> is negative.</exception>
    public abstract Force InputForce(Force outputForce);

    /// <summary>The same unit with no energy left to give: the driver's leg alone.</summary>
    /// <returns>What the driver pushes against when the assist is dead.</returns>
    public abstract BrakeAssist WithoutEnergy();

    /// <summary>Applications out of the stored energy after the engine has stopped, the pedal let up in between.</summary>
    /// <param name="rodTravels">Travel of the output rod at the end of each application; 1 to 100 of them, none negative.</param>
    /// <returns>
    /// One entry an application as it stands at the end of its stroke, the first one first; empty when nothing is stored.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public abstract ImmutableArray<ReserveApplication> Reserve(IReadOnlyList<Length> rodTravels);

    /// <summary>Equal applications out of the stored energy after the engine has stopped, the pedal let up in between.</summary>
    /// <param name="rodTravel">Travel of the output rod at the end of each application; not negative.</param>
    /// <param name="applications">How many applications to list; 1 to 100.</param>
    /// <returns>
    /// One entry an application as it stands at the end of its stroke, the first one first; empty when nothing is stored.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public ImmutableArray<ReserveApplication> Reserve(Length rodTravel, int applications)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(applications, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(applications, 100);
        return Reserve([.. Enumerable.Repeat(rodTravel, applications)]);
    }

    private protected static void RequireStrokes(IReadOnlyList<Length> rodTravels)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rodTravels.Count, 1, nameof(rodTravels));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rodTravels.Count, 100, nameof(rodTravels));
        foreach (Length travel in rodTravels)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(travel, Length.Zero, nameof(rodTravels));
        }
    }
}
