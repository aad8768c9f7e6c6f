namespace BrakeBalance.Charts.Rendering;

/// <summary>The edges of a polygon as plain numbers: a browser asks of them thousands of times a picture.</summary>
internal sealed class Outline
{
    private readonly double[] _x, _y, _end, _dx, _dy, _square;

    public Outline(IReadOnlyList<Dot> polygon)
    {
        // Each edge from the corner before: the last one's first.
        (Dot A, Dot B)[] edges = [.. polygon.TakeLast(1).Concat(polygon).Zip(polygon)];
        _x = [.. edges.Select(edge => edge.A.X)];
        _y = [.. edges.Select(edge => edge.A.Y)];
        _end = [.. edges.Select(edge => edge.B.Y)];
        _dx = [.. edges.Select(edge => edge.B.X - edge.A.X)];
        _dy = [.. edges.Select(edge => edge.B.Y - edge.A.Y)];
        _square = [.. _dx.Zip(_dy, (dx, dy) => dx * dx + dy * dy)];
    }

    /// <summary>Where a level line crosses the edges: a point left of an odd number of them is inside (even-odd rule).</summary>
    public double[] CrossingsAt(double y)
    {
        List<double> crossings = [];
        for (int i = 0; i < _x.Length; i++)
        {
            if ((_y[i] > y) != (_end[i] > y))
            {
                crossings.Add(_x[i] + _dx[i] * (y - _y[i]) / _dy[i]);
            }
        }

        return [.. crossings];
    }

    /// <summary>The distance of a point from the nearest edge.</summary>
    public double DistanceToEdge(Dot p)
    {
        double least = double.MaxValue;
        for (int i = 0; i < _x.Length; i++)
        {
            double px = p.X - _x[i], py = p.Y - _y[i], along = px * _dx[i] + py * _dy[i];
            if (along > 0)
            {
                double t = along < _square[i] ? along / _square[i] : 1;
                px -= _dx[i] * t;
                py -= _dy[i] * t;
            }

            double square = px * px + py * py;
            least = square < least ? square : least;
        }

        return Math.Sqrt(least);
    }
}
