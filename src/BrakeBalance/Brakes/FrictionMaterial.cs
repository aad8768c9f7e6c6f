namespace BrakeBalance.Brakes;

/// <summary>A pad or lining material: its name and its friction against temperature.</summary>
/// <param name="Name">What the material is called.</param>
/// <param name="Friction">Friction coefficient against the temperature of the rubbing surface.</param>
public sealed record FrictionMaterial(string Name, FrictionCurve Friction)
{
    /// <summary>Four invented materials to try things with: a road, a fast-road and a track pad, and a drum lining.</summary>
    /// <remarks>
    /// <para>They cover −40 °C to 900 °C. No real product; replace them by measured points.</para>
    /// <para>Source: data/references/friction-curves.csv; the points are invented, their shape is common practice.</para>
    /// </remarks>
    public static IReadOnlyList<FrictionMaterial> Invented { get; } =
    [
        .. ReferenceTable
            .Rows("friction-curves.csv", row => row)
            .GroupBy(row => row["material"])
            .Select(rows => new FrictionMaterial(Name: rows.Key,
                Friction: FrictionCurve.Through(rows.Select(row =>
                    (Temperature.FromDegreesCelsius(row.Number("temperature_C")!.Value), row.Number("friction")!.Value))))),
    ];

    /// <summary>One of the invented materials by name.</summary>
    /// <param name="name">Its name, such as "road pad".</param>
    /// <exception cref="ArgumentException">There is no such material; the message lists the names.</exception>
    public static FrictionMaterial Named(string name) => Invented.FirstOrDefault(material => material.Name == name)
        ?? throw new ArgumentException(
            $"There is no friction material '{name}'. Known: {string.Join(", ", Invented.Select(material => material.Name))}.",
            nameof(name));
}
