namespace BrakeBalance.Hydraulics;

/// <summary>A valve between the master cylinder and the brakes of one axle: it turns inlet into outlet line pressure.</summary>
/// <remarks>All pressures are gauge. Every valve here is quasi-static; a <see cref="ReducingValve"/> may follow another line as the
/// pressure falls.</remarks>
/// <seealso cref="ReducingValve"/>
/// <seealso cref="MeteringValve"/>
[Kind("proportioning", typeof(ProportioningValve), "proportioning valve, fixed or adjustable")]
[Kind("limiting", typeof(LimitingValve), "pressure limiter")]
[Kind("load-sensing", typeof(LoadSensingValve), "load-sensing proportioning valve")]
[Kind("metering", typeof(MeteringValve), "metering valve")]
public abstract record PressureValve
{
    private Kept<ValveLaw> _law;

    private protected PressureValve()
    {
    }

    /// <summary>Whether the outlet depends on the load on the rear axle as well as on the inlet.</summary>
    public virtual bool SensesLoad => false;

    /// <summary>
    /// Whether the valve opens fully once the front circuit has lost its pressure, as the rear part of a combination valve can; false
    /// unless said.
    /// </summary>
    /// <remarks>
    /// The front circuit's pressure holds a piston that closes the bypass; without it the rear gets all of the inlet. Source: common
    /// practice.
    /// </remarks>
    public virtual bool BypassWhenFrontLost { get; init; }

    /// <summary>Whether the outlet stands higher as the pressure falls than as it rises.</summary>
    public virtual bool LetsGoLate => false;

    /// <summary>Outlet line pressure for an inlet line pressure that rises.</summary>
    /// <param name="inlet">Inlet line pressure, gauge; not negative.</param>
    /// <param name="rearAxleLoad">Normal reaction of the road on the rear axle (both wheels) at that moment; only a load-sensing valve
    /// looks at it.</param>
    /// <returns>Outlet line pressure, gauge; never above <paramref name="inlet"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="inlet"/> is negative.</exception>
    public Pressure OutletPressure(Pressure inlet, Force rearAxleLoad = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inlet, Pressure.Zero);
        return Pressure.FromPascals(OutletPascals(inlet.Pascals, rearAxleLoad.Newtons));
    }

    /// <summary>The outlet of a rising inlet in SI units, without checks: the kernel's way in.</summary>
    /// <param name="inletPascals">Inlet line pressure, gauge, not negative.</param>
    /// <param name="rearAxleLoadNewtons">Normal reaction on the rear axle.</param>
    /// <returns>Outlet line pressure in pascals, gauge.</returns>
    public double OutletPascals(double inletPascals, double rearAxleLoadNewtons) => Law.Outlet(inletPascals, rearAxleLoadNewtons);

    /// <summary>The outlet in SI units, without checks, of an inlet that rises or falls.</summary>
    /// <param name="inletPascals">Inlet line pressure, gauge, not negative.</param>
    /// <param name="rearAxleLoadNewtons">Normal reaction on the rear axle.</param>
    /// <param name="highestOutletPascals">Highest outlet reached so far, gauge; zero before any.</param>
    /// <returns>Outlet line pressure in pascals, gauge; the law of a rising inlet where that is higher.</returns>
    public virtual double OutletPascals(double inletPascals, double rearAxleLoadNewtons, double highestOutletPascals) =>
        OutletPascals(inletPascals, rearAxleLoadNewtons);

    /// <summary>The valve as straight lines: all that a calculation needs to know of its kind.</summary>
    internal ValveLaw Law => _law.Of(this, static valve => valve.Lines);

    private protected abstract ValveLaw Lines { get; }
}
