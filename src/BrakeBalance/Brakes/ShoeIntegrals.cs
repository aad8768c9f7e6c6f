namespace BrakeBalance.Brakes;

/// <summary>Integrals over a lining's arc from which every shoe factor here is made; angles from the supported end.</summary>
internal readonly record struct ShoeIntegrals(double Sin, double Cos, double SinSin, double SinCos, double CosCos)
{
    public static ShoeIntegrals Over(double start, double end)
    {
        double doubled = (Math.Sin(2 * end) - Math.Sin(2 * start)) / 4;
        return new ShoeIntegrals(
            Sin: Math.Cos(start) - Math.Cos(end),
            Cos: Math.Sin(end) - Math.Sin(start),
            SinSin: ((end - start) / 2) - doubled,
            SinCos: ((Math.Sin(end) * Math.Sin(end)) - (Math.Sin(start) * Math.Sin(start))) / 2,
            CosCos: ((end - start) / 2) + doubled);
    }
}
