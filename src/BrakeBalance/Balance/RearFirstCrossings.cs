namespace BrakeBalance.Balance;

/// <summary>Where, within a piece of the characteristic, the rear axle begins or ceases to need more adhesion than the front.</summary>
internal static class RearFirstCrossings
{
    /// <summary>Divides a piece so that one axle leads in each part.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="front">The front axle's limit on a surface of adhesion 1.</param>
    /// <param name="rear">The rear axle's.</param>
    /// <param name="total">Load on both axles.</param>
    /// <param name="from">Lowest pressure.</param>
    /// <param name="to">Highest pressure.</param>
    /// <param name="share">Part of the rear's need that the front must stay below for the rear to lead [–].</param>
    /// <param name="ends">Room for the upper ends of the parts, rising.</param>
    /// <returns>The number of parts.</returns>
    public static int Between(
        in PressurePiece piece,
        in AxleLimit front,
        in AxleLimit rear,
        double total,
        double from,
        double to,
        double share,
        Span<double> ends)
    {
        // T₂ K₁ − T₁ K₂ is a cubic in the pressure, so four of its values are all of it.
        double y0 = Lead(piece, front, rear, total, share, from), y3 = Lead(piece, front, rear, total, share, to);
        double y1 = Lead(piece, front, rear, total, share, from + (to - from) / 3);
        double y2 = Lead(piece, front, rear, total, share, from + (to - from) * 2 / 3);
        double c3 = 4.5 * (y3 - 3 * y2 + 3 * y1 - y0), c2 = 4.5 * (2 * y0 - 5 * y1 + 4 * y2 - y3), c1 = y3 - y0 - c2 - c3;
        Span<double> turns = stackalloc double[3];
        int count = 0;
        double root = Math.Sqrt(Math.Max(0, c2 * c2 - 3 * c3 * c1));
        double q = -(c2 + (c2 < 0 ? -root : root));
        (double one, double two) = (c1 / q, q / (3 * c3));
        foreach (double turn in (ReadOnlySpan<double>)[Math.Min(one, two), Math.Max(one, two)])
        {
            if (turn is > 0 and < 1)
            {
                turns[count++] = turn;
            }
        }

        turns[count++] = 1;
        int parts = 0;
        double low = 0, atLow = y0;
        foreach (double high in turns[..count])
        {
            double atHigh = Lead(piece, front, rear, total, share, from + (to - from) * high);
            if (atLow * atHigh < 0)
            {
                (double a, double b) = (low, high);
                for (int i = 0; i < 45; i++)
                {
                    double middle = 0.5 * (a + b);
                    (a, b) = Lead(piece, front, rear, total, share, from + (to - from) * middle) * atLow > 0 ? (middle, b) : (a, middle);
                }

                ends[parts++] = from + (to - from) * b;
            }

            (low, atLow) = (high, atHigh);
        }

        ends[parts++] = to;
        return parts;
    }

    private static double Lead(in PressurePiece piece, in AxleLimit front, in AxleLimit rear, double total, double share, double pascals)
    {
        double load = Math.Max(0, piece.Load0 + piece.Load1 * pascals);
        return share * (piece.Rear0 + piece.Rear1 * pascals) * front.At(total - load)
            - (piece.Front0 + piece.Front1 * pascals) * rear.At(load);
    }
}
