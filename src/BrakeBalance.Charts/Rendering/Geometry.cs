namespace BrakeBalance.Charts.Rendering;

/// <summary>A point of the drawing; y grows downwards.</summary>
internal readonly record struct Dot(double X, double Y);

/// <summary>An upright box of the drawing; y grows downwards.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public Dot Centre => new((Left + Right) / 2, (Top + Bottom) / 2);

    public static Box Around(Dot centre, double width, double height) =>
        new(centre.X - width / 2, centre.Y - height / 2, centre.X + width / 2, centre.Y + height / 2);

    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Contains(Box other) => other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;

    public bool Contains(Dot dot) => dot.X >= Left && dot.X <= Right && dot.Y >= Top && dot.Y <= Bottom;
}

internal static class Geometry
{
    /// <summary>The part of a segment inside a box as parameters from 0 to 1; null when it stays outside.</summary>
    public static (double From, double To)? Clip(Dot a, Dot b, Box box)
    {
        double from = 0, to = 1, dx = b.X - a.X, dy = b.Y - a.Y;
        return Cut(-dx, a.X - box.Left) && Cut(dx, box.Right - a.X) && Cut(-dy, a.Y - box.Top) && Cut(dy, box.Bottom - a.Y)
            ? (from, to)
            : null;

        bool Cut(double p, double q)
        {
            if (p == 0)
            {
                return q >= 0;
            }

            double r = q / p;
            if (p < 0)
            {
                from = Math.Max(from, r);
            }
            else
            {
                to = Math.Min(to, r);
            }

            return from <= to;
        }
    }

    /// <summary>The runs of a polyline inside a box.</summary>
    public static IReadOnlyList<IReadOnlyList<Dot>> Clip(IReadOnlyList<Dot> path, Box box)
    {
        List<IReadOnlyList<Dot>> runs = [];
        List<Dot> run = [];
        for (int i = 1; i < path.Count; i++)
        {
            if (Clip(path[i - 1], path[i], box) is not { } part)
            {
                Finish();
                continue;
            }

            Dot start = Along(path[i - 1], path[i], part.From);
            if (run.Count == 0 || part.From > 0)
            {
                Finish();
                run.Add(start);
            }

            run.Add(Along(path[i - 1], path[i], part.To));
            if (part.To < 1)
            {
                Finish();
            }
        }

        Finish();
        return runs;

        void Finish()
        {
            if (run.Count > 1)
            {
                runs.Add(run);
            }

            run = [];
        }
    }

    /// <summary>The point at a fraction of a segment.</summary>
    public static Dot Along(Dot a, Dot b, double t) => new(a.X + (b.X - a.X) * t, a.Y + (b.Y - a.Y) * t);

    /// <summary>The distance of two points.</summary>
    public static double Distance(Dot a, Dot b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));

    public static double Distance(Dot p, Dot a, Dot b) => Math.Sqrt(SquaredDistance(p, a, b));

    /// <summary>The square of the distance of a point from a segment.</summary>
    public static double SquaredDistance(Dot p, Dot a, Dot b)
    {
        double t = Place(p, a, b), x = p.X - a.X - (b.X - a.X) * t, y = p.Y - a.Y - (b.Y - a.Y) * t;
        return x * x + y * y;
    }

    /// <summary>The shortest way from a box to segments: a point of the box, a point of a segment; the same where they meet.</summary>
    public static (Dot From, Dot To) Between(Box box, IReadOnlyList<(Dot A, Dot B)> segments)
    {
        (Dot From, Dot To) best = default;
        double least = double.MaxValue;
        void Try(Dot from, Dot to)
        {
            if (Distance(from, to) is var way && way < least)
            {
                (least, best) = (way, (from, to));
            }
        }

        foreach ((Dot a, Dot b) in segments)
        {
            if (Clip(a, b, box) is { } part)
            {
                Dot inside = Along(a, b, part.From);
                return (inside, inside);
            }

            foreach (Dot corner in (ReadOnlySpan<Dot>)
                [new(box.Left, box.Top), new(box.Right, box.Top), new(box.Left, box.Bottom), new(box.Right, box.Bottom)])
            {
                Try(corner, Along(a, b, Place(corner, a, b)));
            }

            Try(Nearest(box, a), a);
            Try(Nearest(box, b), b);
        }

        return best;
    }

    private static Dot Nearest(Box box, Dot dot) => new(Math.Clamp(dot.X, box.Left, box.Right), Math.Clamp(dot.Y, box.Top, box.Bottom));

    /// <summary>The place on a segment nearest to a point, as a fraction of it.</summary>
    private static double Place(Dot p, Dot a, Dot b)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, length = dx * dx + dy * dy;
        return length == 0 ? 0 : Math.Clamp(((p.X - a.X) * dx + (p.Y - a.Y) * dy) / length, 0, 1);
    }

    /// <summary>Drops points of a polyline that lie within a tolerance of the line through their neighbours.</summary>
    public static IReadOnlyList<Dot> Simplify(IReadOnlyList<Dot> path, double tolerance)
    {
        if (path.Count < 3)
        {
            return path;
        }

        bool[] keep = new bool[path.Count];
        keep[0] = keep[^1] = true;
        Stack<(int From, int To)> open = new([(0, path.Count - 1)]);
        while (open.TryPop(out (int From, int To) part))
        {
            int farthest = -1;
            double most = tolerance;
            for (int i = part.From + 1; i < part.To; i++)
            {
                double distance = Distance(path[i], path[part.From], path[part.To]);
                if (distance > most)
                {
                    (most, farthest) = (distance, i);
                }
            }

            if (farthest >= 0)
            {
                keep[farthest] = true;
                open.Push((part.From, farthest));
                open.Push((farthest, part.To));
            }
        }

        return [.. path.Where((_, i) => keep[i])];
    }

    /// <summary>Whether a point lies inside a polygon (even-odd rule).</summary>
    public static bool Inside(Dot p, IReadOnlyList<Dot> polygon)
    {
        bool inside = false;
        for (int i = 0, j = polygon.Count - 1; i < polygon.Count; j = i++)
        {
            Dot a = polygon[i], b = polygon[j];
            if ((a.Y > p.Y) != (b.Y > p.Y) && p.X < (b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y) + a.X)
            {
                inside = !inside;
            }
        }

        return inside;
    }

    /// <summary>Whether a box lies inside a polygon.</summary>
    public static bool Inside(Box box, IReadOnlyList<Dot> polygon)
    {
        if (!Inside(box.Centre, polygon))
        {
            return false;
        }

        for (int i = 0, j = polygon.Count - 1; i < polygon.Count; j = i++)
        {
            if (Clip(polygon[i], polygon[j], box) is not null)
            {
                return false;
            }
        }

        return true;
    }
}
