namespace BrakeBalance.Tests.Oracle;

/// <summary>What the car does at one pressure and speed.</summary>
internal readonly record struct PlainState(
    double Pressure,
    double FrontLinePressure,
    double RearLinePressure,
    double FrontForce,
    double RearForce,
    double FrontLoad,
    double RearLoad,
    double BrakingRate,
    double OtherForce);

/// <summary>The first lock-up as a slowly rising pressure finds it.</summary>
/// <param name="At">The car at that moment.</param>
/// <param name="FrontUsed">Braking force of the front axle over what its tyres can hold.</param>
/// <param name="RearUsed">The same of the rear axle.</param>
/// <param name="Efficiency">Braking force of all tyres over what they could hold at most.</param>
internal sealed record PlainLock(PlainState At, double FrontUsed, double RearUsed, double Efficiency)
{
    public bool RearIsFirst => RearUsed > FrontUsed;

    /// <summary>The engine's braking alone is more than the road holds: the axle slides before the pedal moves, and the road gives less
    /// than the engine asks.</summary>
    public bool IsBeforeThePedal => At.Pressure == 0;

    /// <summary>The two axles are so close that either may be called the first.</summary>
    public bool IsTie => Math.Abs(FrontUsed - RearUsed) < 2e-3;
}

/// <summary>The balance of a car by the longest and plainest way: try every pressure from nothing upwards and look at both axles.</summary>
/// <remarks>
/// <para>Newton: m a = T₁ + T₂ + R + D. Moments about the road: the load m a h/E moves from the rear axle to the front; lift is taken
/// off each axle as
/// measured at its wheels, so it holds what drag would do besides. A wheel slides when its braking force exceeds adhesion times
/// load.</para>
/// <para>A load-sensing valve looks at the rear load that its own braking causes; that load is found by halving.</para>
/// </remarks>
internal static class Textbook
{
    /// <summary>Pressures tried between nothing and the highest.</summary>
    private const int Tries = 320;

    public static PlainState At(PlainCar car, double pressure, double speed)
    {
        if (!car.FeelsLoad)
        {
            return WithValvesFeeling(car, pressure, speed, 0);
        }

        // Suppose a rear load, let the valves act on it, and see what rear load comes of the braking: more supposed gives less.
        double low = 0;
        double high = StaticLoads(car, speed).Rear;
        for (int i = 0; i < 45; i++)
        {
            double supposed = (low + high) / 2;
            if (WithValvesFeeling(car, pressure, speed, supposed).RearLoad > supposed)
            {
                low = supposed;
            }
            else
            {
                high = supposed;
            }
        }

        return WithValvesFeeling(car, pressure, speed, (low + high) / 2);
    }

    /// <summary>Load on each axle of the car that rolls without braking.</summary>
    public static (double Front, double Rear) StaticLoads(PlainCar car, double speed)
    {
        double weight = car.Mass * PlainCar.Gravity;
        double air = DynamicPressure(car, speed);
        double rear = weight * car.FrontAxleToCentreOfGravity / car.Wheelbase;
        return (weight - rear - (air * car.Front.LiftArea), rear - (air * car.Rear.LiftArea));
    }

    /// <summary>Load on each axle at a braking rate; wheels in the air carry nothing.</summary>
    public static (double Front, double Rear) Loads(PlainCar car, double brakingRate, double speed)
    {
        (double front, double rear) = StaticLoads(car, speed);
        double moved = car.Mass * (brakingRate * PlainCar.Gravity) * car.CentreOfGravityHeight / car.Wheelbase;
        if (moved > rear)
        {
            moved = rear;
        }

        return (front + moved, rear - moved);
    }

    /// <summary>The greatest braking force that the road takes from an axle.</summary>
    public static double Grip(PlainAxle axle, double adhesion, double axleLoad)
    {
        double factor = 1 - (axle.LoadSensitivity * ((axleLoad / 2 / axle.ReferenceWheelLoad) - 1));
        if (factor < 0.1)
        {
            factor = 0.1;
        }

        return adhesion * axle.AdhesionFactor * factor * axleLoad;
    }

    /// <summary>Braking force over grip: 1 is about to slide. An axle that is not braked uses nothing, not even in the air.</summary>
    public static double Used(PlainAxle axle, double adhesion, double force, double load)
    {
        if (force <= 0)
        {
            return 0;
        }

        double grip = Grip(axle, adhesion, load);
        return grip > 0 ? force / grip : double.PositiveInfinity;
    }

    /// <summary>Braking force of the tyres when both axles are about to slide.</summary>
    public static double MostForce(PlainCar car, double adhesion, double speed)
    {
        double other = OtherForce(car, speed);
        double low = 0;
        double high = 5 * car.Mass * PlainCar.Gravity;
        for (int i = 0; i < 60; i++)
        {
            double supposed = (low + high) / 2;
            (double front, double rear) = Loads(car, (supposed + other) / (car.Mass * PlainCar.Gravity), speed);
            if (Grip(car.Front, adhesion, front) + Grip(car.Rear, adhesion, rear) > supposed)
            {
                low = supposed;
            }
            else
            {
                high = supposed;
            }
        }

        return (low + high) / 2;
    }

    /// <summary>Raises the pressure step by step until an axle slides, then closes in on the moment by halving the last step.</summary>
    /// <returns>The first lock-up; null when the highest pressure locks nothing.</returns>
    public static PlainLock? FirstLock(PlainCar car, double adhesion, double speed)
    {
        double before = 0;
        for (int i = 0; i <= Tries; i++)
        {
            double pressure = car.HighestPressure * i / Tries;
            if (MostUsed(car, adhesion, speed, pressure) < 1)
            {
                before = pressure;
                continue;
            }

            double after = pressure;
            for (int k = 0; k < 40; k++)
            {
                double middle = (before + after) / 2;
                if (MostUsed(car, adhesion, speed, middle) < 1)
                {
                    before = middle;
                }
                else
                {
                    after = middle;
                }
            }

            PlainState at = At(car, after, speed);
            return new PlainLock(
                at,
                Used(car.Front, adhesion, at.FrontForce, at.FrontLoad),
                Used(car.Rear, adhesion, at.RearForce, at.RearLoad),
                Efficiency(car, adhesion, speed, at));
        }

        return null;
    }

    /// <summary>Part of what the road offers that is used: at first lock-up, or at the highest pressure when nothing locks.</summary>
    public static double Efficiency(PlainCar car, double adhesion, double speed, PlainState at) =>
        Math.Min(1, (at.FrontForce + at.RearForce) / MostForce(car, adhesion, speed));

    /// <summary>The same car with another knee: of the first proportioning valve in the rear line, or of one put in front of the other
    /// valves.</summary>
    public static PlainCar WithRearKnee(PlainCar car, double knee, double slope)
    {
        List<PlainValve> valves = [.. car.Rear.Valves];
        int index = valves.FindIndex(valve => valve is ProportioningAt);
        if (index < 0)
        {
            valves.Insert(0, new ProportioningAt(knee, slope));
        }
        else
        {
            valves[index] = new ProportioningAt(knee, slope);
        }

        return car with { Rear = car.Rear with { Valves = [.. valves] } };
    }

    private static double MostUsed(PlainCar car, double adhesion, double speed, double pressure)
    {
        PlainState at = At(car, pressure, speed);
        return Math.Max(Used(car.Front, adhesion, at.FrontForce, at.FrontLoad), Used(car.Rear, adhesion, at.RearForce, at.RearLoad));
    }

    private static PlainState WithValvesFeeling(PlainCar car, double pressure, double speed, double rearLoadFelt)
    {
        double frontLine = Through(car.Front.Valves, pressure, rearLoadFelt);
        double rearLine = Through(car.Rear.Valves, pressure * car.RearToFrontMasterPressure, rearLoadFelt);
        double front = BrakingForce(car.Front, frontLine);
        double rear = BrakingForce(car.Rear, rearLine);
        double other = OtherForce(car, speed);
        double rate = (front + rear + other) / (car.Mass * PlainCar.Gravity);
        (double frontLoad, double rearLoad) = Loads(car, rate, speed);
        return new PlainState(pressure, frontLine, rearLine, front, rear, frontLoad, rearLoad, rate, other);
    }

    private static double Through(PlainValve[] valves, double pressure, double rearLoadFelt)
    {
        foreach (PlainValve valve in valves)
        {
            pressure = valve.Outlet(pressure, rearLoadFelt);
        }

        return pressure;
    }

    private static double BrakingForce(PlainAxle axle, double linePressure)
    {
        double acting = linePressure > axle.ThresholdPressure ? linePressure - axle.ThresholdPressure : 0;
        return (2 * axle.TorquePerPascal * acting / axle.WheelRadius) + axle.EngineBrakingForce;
    }

    private static double OtherForce(PlainCar car, double speed)
    {
        (double front, double rear) = StaticLoads(car, speed);
        return (car.RollingCoefficient * (front + rear)) + (DynamicPressure(car, speed) * car.DragArea);
    }

    private static double DynamicPressure(PlainCar car, double speed) => car.AirDensity * speed * speed / 2;
}
