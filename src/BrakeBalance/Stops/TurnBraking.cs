using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>Which side of a car in a bend a wheel is on.</summary>
public enum BendSide
{
    /// <summary>Towards the centre of the bend.</summary>
    Inner,

    /// <summary>Away from the centre of the bend.</summary>
    Outer,
}

/// <summary>The first wheel to reach its limit while braking in a bend.</summary>
/// <param name="Axle">Axle of the wheel.</param>
/// <param name="Side">Side of the wheel.</param>
/// <param name="LinePressure">Line pressure at the master cylinder at that moment, gauge.</param>
/// <param name="BrakingRate">Deceleration along the path in units of g at that moment [–], rolling resistance, drag and grade
/// included.</param>
/// <param name="InnerUtilisation">Force over peak adhesion force of the inner wheel of each axle at that moment [–].</param>
/// <param name="OuterUtilisation">Force over peak adhesion force of the outer wheel of each axle at that moment [–].</param>
/// <param name="SideForceLeft">Side force that each axle could give at that moment, beside its brake force; not negative.</param>
public sealed record TurnLock(
    Axle Axle, BendSide Side, Pressure LinePressure, double BrakingRate, PerAxle<double> InnerUtilisation, PerAxle<double> OuterUtilisation,
    PerAxle<Force> SideForceLeft);

/// <summary>The first axle that no longer holds the bend: the front runs wide, the rear spins.</summary>
/// <param name="Axle">The axle.</param>
/// <param name="LinePressure">Line pressure at the master cylinder at that moment, gauge.</param>
/// <param name="BrakingRate">Deceleration along the path in units of g at that moment [–].</param>
/// <param name="SideForceLeft">Side force that the rolling wheels of each axle could give at that moment; not negative, and at the lost
/// axle no more than the bend asks for.</param>
public sealed record TurnLoss(Axle Axle, Pressure LinePressure, double BrakingRate, PerAxle<Force> SideForceLeft);

/// <summary>What happens in a bend while line pressure rises.</summary>
/// <param name="LateralAcceleration">Lateral acceleration of the bend.</param>
/// <param name="SideForceNeeded">Side force that the bend asks of each axle: m a_y b/E in front, m a_y a/E at the rear.</param>
/// <param name="FirstWheel">The first wheel at its limit; null when no pressure brings one there.</param>
/// <param name="FirstAxle">The first axle that no longer holds the bend; null when no pressure takes it.</param>
public sealed record TurnCourse(Acceleration LateralAcceleration, PerAxle<Force> SideForceNeeded, TurnLock? FirstWheel,
    TurnLoss? FirstAxle);

/// <summary>Braking in a bend with load transfer along and across the car, followed until an axle lets go.</summary>
/// <remarks>
/// <para>Wheel loads N = ½ N_i ± φ_i m a_y h/t_i with φ₁ + φ₂ = 1, N_i with the transfer (T₁ + T₂ + R + D) h/E; axle side
/// forces m a_y b/E and m a_y a/E, shared by the rolling wheels of the axle in proportion to their loads (same slip angle); brake forces
/// equal left and right. A wheel is at its limit when √(F_x² + F_y²) = μ_peak(N) N; it then locks, keeps μ_locked(N) N against its
/// motion and gives no side force, and its partner takes all of the axle's. An axle has lost the bend when neither wheel rolls: what the
/// rolling ones can give, Σ √((μ_peak N)² − F_x²), is then less than the bend asks for. On a straight road that is the lock of
/// both wheels.</para>
/// <para>Assumes steady cornering and braking, no yaw acceleration, roll axis on the ground, and that a braked wheel which has left the
/// road counts as locked (utilisation 2). Left out: the moment of unequal brake forces once an inner wheel slides, which turns the car out
/// of the bend and so helps the rear; and the side force of a locked wheel, small at the slip angles of a car that still holds its
/// bend.</para>
/// <para>A load-sensing valve follows the rear axle's load with its transfer where the vehicle is given.</para>
/// <para>Source: common practice; friction circle; an axle locks with its second wheel: 49 CFR 571.135 S7.2 (read).</para>
/// </remarks>
internal static class TurnBraking
{
    private const double Together = 1 - 1e-9;

    /// <summary>Braking torque of front and rear axle at a line pressure in pascals and a rear axle load in newtons.</summary>
    internal delegate (double Front, double Rear) Torques(double pascals, double rearNewtons);

    /// <summary>Raises line pressure until an axle no longer holds the bend.</summary>
    /// <param name="car">The car on its road; </param>
    /// <param name="lateralAcceleration">Lateral acceleration of the bend; not negative.</param>
    /// <param name="frontRollShare">Part of the lateral load transfer that the front axle takes [–]; 0 to 1.</param>
    /// <param name="speed">Speed at which lift and drag are taken; not negative.</param>
    /// <returns>First wheel and first axle, up to four times the last point of the torque curves; null when the bend alone is already
    /// beyond the tyres.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static TurnCourse? Follow(BrakedCar car, Acceleration lateralAcceleration, double frontRollShare, Speed speed)
    {
        var numbers = new CarNumbers(car);
        double highest = 4 * Math.Max(numbers.Front.Brakes.HighestPascals, numbers.Rear.Brakes.HighestPascals);
        return Follow(
            numbers,
            (pascals, load) => (numbers.Front.Brakes.NewtonMetres(pascals, load), numbers.Rear.Brakes.NewtonMetres(pascals, load)),
            numbers.SensesLoad, highest,
            lateralAcceleration, frontRollShare, speed);
    }

    /// <summary>The same for a vehicle as it is set, its load-sensing valve alive.</summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="setup">The set-up of that vehicle at a load on a surface.</param>
    /// <param name="lateralAcceleration">Lateral acceleration of the bend; not negative.</param>
    /// <param name="speed">Speed at which lift and drag are taken; not negative.</param>
    /// <returns>First wheel and first axle, up to the vehicle's highest pressure; null when the bend alone is already beyond the
    /// tyres.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static TurnCourse? Follow(Vehicle vehicle, StopSetup setup, Acceleration lateralAcceleration, Speed speed)
    {
        return Follow(
            new CarNumbers(setup.Car), TorquesOf(vehicle), vehicle.Hydraulics.SensesLoad, vehicle.Hydraulics.MaximumPressure.Pascals,
            lateralAcceleration, setup.FrontRollShare, speed);
    }

    internal static Torques TorquesOf(Vehicle vehicle)
    {
        BrakeHydraulics hydraulics = vehicle.Hydraulics;
        double ratio = hydraulics.Split.RearToFrontPressureRatio;
        (double front, double frontThreshold) = Gain(vehicle.Brakes.Front);
        (double rear, double rearThreshold) = Gain(vehicle.Brakes.Rear);
        return (pascals, load) => (
            front * Math.Max(0, BrakeHydraulics.Through(hydraulics.FrontValves, pascals, load) - frontThreshold),
            rear * Math.Max(0, BrakeHydraulics.Through(hydraulics.RearValves, pascals * ratio, load) - rearThreshold));

        static (double TorquePerPascal, double Threshold) Gain(Brake brake) =>
            (2 * brake.TorqueNewtonMetresPerPascal, brake.ThresholdPressure.Pascals);
    }

    internal static TurnCourse? Follow(
        in CarNumbers car, Torques torques, bool sensesLoad, double highestPascals, Acceleration lateralAcceleration,
            double frontRollShare, Speed speed)
    {
        double lateral = Require.NotNegative(lateralAcceleration, nameof(lateralAcceleration)).MetersPerSecondSquared;
        Require.Between(frontRollShare, 0, 1, nameof(frontRollShare));
        double v = Require.NotNegative(speed, nameof(speed)).MetersPerSecond;
        var bend = new Bend(car, torques, sensesLoad, lateral, frontRollShare, v);
        double pascals = 0;
        if (bend.Solve(0, 0).Greatest >= 1)
        {
            return null;
        }

        int locked = 0;
        TurnLock? wheel = null;
        TurnLoss? axle = null;
        while (axle is null && bend.NextLimit(locked, ref pascals, highestPascals) is { } state)
        {
            wheel ??= new TurnLock(
                state.First < 2 ? Axle.Front : Axle.Rear, state.First % 2 == 0 ? BendSide.Inner : BendSide.Outer,
                    Pressure.FromPascals(pascals), state.Rate,
                new(state.Used[0], state.Used[2]), new(state.Used[1], state.Used[3]), state.Left);
            int at = state.First < 2 ? 0b0011 : 0b1100;
            locked = state.WithLimits(locked);
            if ((locked & at) == at)
            {
                axle = new TurnLoss(state.First < 2 ? Axle.Front : Axle.Rear, Pressure.FromPascals(pascals), state.Rate, state.Left);
            }
        }

        double wheelbase = car.FrontArm + car.RearArm;
        return new TurnCourse(
            lateralAcceleration, new(Force.FromNewtons(car.Mass * lateral * car.RearArm / wheelbase),
                Force.FromNewtons(car.Mass * lateral * car.FrontArm / wheelbase)), wheel, axle);
    }

    /// <summary>The car in a bend; wheels in the order front inner, front outer, rear inner, rear outer, and a set bit for each that is
    /// locked.</summary>
    private readonly struct Bend(in CarNumbers car, Torques torques, bool sensesLoad, double lateral, double frontShare, double speed)
    {
        private readonly CarNumbers _car = car;
        private readonly double _frontAtRest = car.Front.Static - car.Front.Lift * speed * speed;
        private readonly double _rearAtRest = car.Rear.Static - car.Rear.Lift * speed * speed;
        private readonly double _frontSide = car.Mass * lateral * car.RearArm / (car.FrontArm + car.RearArm);
        private readonly double _rearSide = car.Mass * lateral * car.FrontArm / (car.FrontArm + car.RearArm);
        private readonly double _rollMoment = car.Mass * lateral * car.HeightOverWheelbase * (car.FrontArm + car.RearArm);

        /// <summary>Raises the pressure to where a rolling wheel is at its limit; null when the highest pressure brings none
        /// there.</summary>
        public State? NextLimit(int locked, ref double pascals, double highest)
        {
            State state = Solve(pascals, locked);
            if (state.Greatest >= Together)
            {
                return state;
            }

            double low;
            double below;
            double step = highest / 120;
            do
            {
                if (pascals >= highest)
                {
                    return null;
                }

                low = pascals;
                below = 1 - state.Greatest;
                pascals = Math.Min(highest, low + step);
                state = Solve(pascals, locked);
            }
            while (state.Greatest < 1);

            double above = state.Greatest - 1;

            for (int i = 0; i < 100 && state.Greatest > 1 + 1e-12 && pascals - low > 1e-6; i++)
            {
                double middle = low + (pascals - low) * Math.Clamp(below / (below + above), 1e-3, 1 - 1e-3);
                State at = Solve(middle, locked);
                (low, below, pascals, above, state) = at.Greatest < 1
                    ? (middle, 1 - at.Greatest, pascals, 0.5 * above, state) : (low, 0.5 * below, middle, at.Greatest - 1, at);
            }

            return state;
        }

        public State Solve(double pascals, int locked)
        {
            State state;
            if (!sensesLoad && locked == 0)
            {
                (double front, double rear) = torques(pascals, 0);
                double retarding = Retarding(2 * (Demand(_car.Front, front) + Demand(_car.Rear, rear)));
                Transfer(pascals, locked, _car.HeightOverWheelbase * retarding, out state, (front, rear));
                return state;
            }

            // The force of a locked wheel and the knee of a load-sensing valve depend on the loads: one transfer is consistent.
            double low = -Math.Max(0, _frontAtRest);
            double high = Math.Max(0, _rearAtRest);
            double atLow = Transfer(pascals, locked, low, out _) - low;
            double atHigh = Transfer(pascals, locked, high, out state) - high;
            if (atHigh >= 0 || atLow <= 0)
            {
                return state;
            }

            for (int i = 0; i < 60 && high - low > 1e-10 * _car.Mass; i++)
            {
                double middle = low + (high - low) * Math.Clamp(atLow / (atLow - atHigh), 1e-3, 1 - 1e-3);
                double at = Transfer(pascals, locked, middle, out state) - middle;
                if (Math.Abs(at) < 1e-10 * _car.Mass)
                {
                    break;
                }

                (low, atLow, high, atHigh) = at > 0 ? (middle, at, high, 0.5 * atHigh) : (low, 0.5 * atLow, middle, at);
            }

            return state;
        }

        /// <summary>The load transfer that follows from the forces at a load transfer.</summary>
        private double Transfer(double pascals, int locked, double transfer, out State state, (double Front, double Rear)? given = null)
        {
            double shifted = Math.Clamp(transfer, -Math.Max(0, _frontAtRest), Math.Max(0, _rearAtRest));
            double front = Math.Max(0, _frontAtRest + shifted);
            double rear = Math.Max(0, _rearAtRest - shifted);
            (double frontTorque, double rearTorque) = given ?? torques(pascals, rear);
            state = default;
            double braking = Side(_car.Front, 0, frontTorque, front, frontShare * _rollMoment / _car.Front.Track, _frontSide, locked,
                ref state, out double frontLeft)
                + Side(_car.Rear, 2, rearTorque, rear, (1 - frontShare) * _rollMoment / _car.Rear.Track, _rearSide, locked, ref state,
                    out double rearLeft);
            double retarding = Retarding(braking);
            (state.LeftFront, state.LeftRear) = (frontLeft, rearLeft);
            state.Rate = (retarding + _car.GradeNewtons) / (_car.Mass * Gravity.StandardMetresPerSecondSquared);
            return _car.HeightOverWheelbase * retarding;
        }

        private double Retarding(double braking) => braking + _car.RollingNewtons + _car.DragPerSpeedSquared * speed * speed;

        private static double Demand(in AxleNumbers axle, double torque) => 0.5 * (torque + axle.EngineTorque) / axle.Radius;

        private static double Side(
            in AxleNumbers axle, int place, double torque, double reaction, double across, double needed, int locked, ref State state,
                out double left)
        {
            // A wheel that has left the road takes no load, and its partner all of it.
            Span<double> loads = [Math.Clamp(0.5 * reaction - across, 0, reaction), 0];
            loads[1] = reaction - loads[0];
            double demand = Demand(axle, torque);
            double rolling = 0;
            double braking = 0;
            left = 0;
            for (int i = 0; i < 2; i++)
            {
                bool locks = (locked >> (place + i) & 1) != 0;
                braking += locks ? (loads[i] > 0 ? axle.Ends.LockedMu(loads[i]) * loads[i] : 0) : demand;
                rolling += locks ? 0 : loads[i];
            }

            for (int i = 0; i < 2; i++)
            {
                if ((locked >> (place + i) & 1) != 0)
                {
                    continue;
                }

                double most = loads[i] > 0 ? axle.Ends.PeakMu(loads[i]) * loads[i] : 0;
                double side = rolling > 0 ? needed * loads[i] / rolling : 0;
                left += Math.Sqrt(Math.Max(0, most * most - demand * demand));
                state.Note(place + i, most > 0 ? Math.Sqrt(demand * demand + side * side) / most : demand > 0 || side > 0 ? 2 : 0);
            }

            return braking;
        }
    }

    /// <summary>The four wheels at one pressure; the utilisation of a locked wheel is 0, because it can reach no limit any more.</summary>
    private struct State
    {
        public Four Used;
        public double LeftFront;
        public double LeftRear;
        public double Rate;
        public int First;

        public readonly PerAxle<Force> Left => new(Force.FromNewtons(LeftFront), Force.FromNewtons(LeftRear));

        public readonly double Greatest => Used[First];

        public void Note(int wheel, double used)
        {
            Used[wheel] = used;
            First = used > Used[First] ? wheel : First;
        }

        public readonly int WithLimits(int locked)
        {
            for (int i = 0; i < 4; i++)
            {
                locked |= Used[i] >= Together * Used[First] ? 1 << i : 0;
            }

            return locked;
        }
    }

    [System.Runtime.CompilerServices.InlineArray(4)]
    private struct Four
    {
        private double _first;
    }
}
