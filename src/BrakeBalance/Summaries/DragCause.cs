using BrakeBalance.Answers;
using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Summaries;

/// <summary>Something that by the numbers of the file pushes on the brakes with the pedal released.</summary>
/// <remarks>The push rod's fit is apart: <see cref="PushRodFit.Verdict"/> tells what its readings allow to be said.</remarks>
public abstract record DragCause
{
    private DragCause()
    {
    }

    /// <summary>Whether the brakes drag by it; false when something else holds it.</summary>
    public virtual bool Drags => true;

    /// <summary>The causes of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>The causes; empty when there is none, or when the car does not say what lies between foot and line pressure.</returns>
    public static IReadOnlyList<DragCause> Of(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        List<DragCause> causes = [.. from axle in (Axle[])[Axle.Front, Axle.Rear]
            let held = vehicle.Control?.Residual[axle]?.Held
            where held > vehicle.Brakes[axle].ThresholdPressure
            select new ResidualPressure(axle, held.Value, vehicle.Brakes[axle].ThresholdPressure)];
        if (vehicle.Control is { Assist: HydraulicBooster { ReleasedOutputForce: var output } } control && output > Force.Zero)
        {
            causes.Add(new BackPressure(output, control.MasterCylinder.ReturnSpringForce));
        }

        return causes;
    }

    /// <summary>The cause in words.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns>A sentence.</returns>
    public abstract string Words(UnitSystem units);

    /// <summary>A residual pressure valve that holds more than the brake's return springs overcome.</summary>
    /// <param name="Axle">The axle.</param>
    /// <param name="Held">What the valve holds, gauge.</param>
    /// <param name="Threshold">Pressure up to which the brake gives no torque, gauge.</param>
    public sealed record ResidualPressure(Axle Axle, Pressure Held, Pressure Threshold) : DragCause
    {
        /// <inheritdoc/>
        public override string Words(UnitSystem units) =>
            $"The {(Axle == Axle.Front ? "front" : "rear")} residual valve keeps {DeskCar.Small.Text(Held, units)}, more than the "
            + $"{DeskCar.Small.Text(Threshold, units)} up to which the brake gives no torque: it drags.";
    }

    /// <summary>Pressure in the return line of a pump-fed booster.</summary>
    /// <param name="Output">Force on the master cylinder's rod with the pedal released.</param>
    /// <param name="Spring">Force of the master cylinder's return spring.</param>
    public sealed record BackPressure(Force Output, Force Spring) : DragCause
    {
        /// <inheritdoc/>
        public override bool Drags => Output > Spring;

        /// <inheritdoc/>
        public override string Words(UnitSystem units) => Drags
            ? $"Back-pressure in the return line leaves {Measure.ControlForce.Text(Output - Spring, units)} on the master cylinder "
                + "with the pedal released: the brakes release slowly and drag."
            : "Back-pressure in the return line pushes on the released booster, but the master cylinder's spring holds it.";
    }
}
