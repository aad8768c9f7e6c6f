using BrakeBalance.Brakes;

namespace BrakeBalance.Measurements;

/// <summary>Braking force of one axle per pascal of line pressure, against the factor on its friction: a table, so that a hundred thousand draws do not work out shoe geometry each.</summary>
internal sealed class FrictionGain
{
    private const double Lowest = 0.3;
    private const double Highest = 2.2;
    private const int Nodes = 190;

    private readonly double[] _newtonsPerPascal = new double[Nodes + 1];

    public FrictionGain(Brake brake, double loadedRadiusMetres)
    {
        double last = 0;
        for (int i = 0; i <= Nodes; i++)
        {
            double friction = brake.FrictionCoefficient * (Lowest + (Highest - Lowest) * i / Nodes);
            try
            {
                last = friction <= Brake.HighestFriction ? 2 * brake.WithFriction(friction).TorqueNewtonMetresPerPascal / loadedRadiusMetres : last;
            }
            catch (ArgumentOutOfRangeException)
            {
                // Past self-locking the shoe grabs: the force is as large as one likes, and a large number serves.
                last *= 1.2;
            }

            _newtonsPerPascal[i] = last;
        }
    }

    /// <summary>Newtons of both wheels per pascal.</summary>
    /// <param name="factor">Friction over the brake's own [–].</param>
    public double At(double factor)
    {
        double x = Math.Clamp((factor - Lowest) / (Highest - Lowest), 0, 1) * Nodes;
        int i = Math.Min((int)x, Nodes - 1);
        return _newtonsPerPascal[i] + (x - i) * (_newtonsPerPascal[i + 1] - _newtonsPerPascal[i]);
    }
}
