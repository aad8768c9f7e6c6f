using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>A surface as the tyres meet it.</summary>
public sealed record SurfaceCondition
{
    /// <summary>Name, such as "dry".</summary>
    public required string Name { get; init; }

    /// <summary>Middle coefficient of adhesion [–]; 0.03 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.03 to 2.</exception>
    public required double Adhesion { get; init => field = Require.Between(value, 0.03, 2); }

    /// <summary>Relative standard deviation of the adhesion from day to day and place to place [–]; 0 to 0.5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5.</exception>
    public double Spread { get; init => field = Require.Between(value, 0, 0.5); } = 0.08;

    /// <summary>Five surfaces, evenly from the lowest to the highest adhesion of conditions, each without a spread of its own.</summary>
    /// <param name="conditions">The conditions.</param>
    /// <returns>The surfaces, named by their adhesion.</returns>
    public static IReadOnlyList<SurfaceCondition> Over(Conditions conditions) =>
        [.. Enumerable.Range(0, 5).Select(i => conditions.LowestAdhesion + (conditions.HighestAdhesion - conditions.LowestAdhesion) * i / 4)
            .Select(k => new SurfaceCondition { Name = Invariant.Text($"adhesion {k:0.00}"), Adhesion = k, Spread = 0 })];

    /// <summary>What is believed of a surface before anything is measured on it, from the words in its name.</summary>
    /// <param name="name">Name of the surface.</param>
    /// <returns>Middle and spread for street tyres; a wide band when the name says nothing.</returns>
    /// <remarks>Ranges for street tyres: common practice.</remarks>
    public static SurfaceCondition Typical(string name)
    {
        bool Has(params string[] words) => words.Any(w => name.Contains(w, StringComparison.OrdinalIgnoreCase));
        (double adhesion, double spread) = Has("ice") ? (0.12, 0.35)
            : Has("snow") ? (0.25, 0.3)
            : Has("gravel", "loose", "dirt") ? (0.55, 0.2)
            : Has("damp") ? (0.65, 0.2)
            : Has("wet") ? (0.5, 0.2)
            : Has("slick", "track tyre") ? (1.15, 0.12)
            : Has("dry") ? (0.88, 0.13)
            : (0.7, 0.35);
        return new SurfaceCondition { Name = name, Adhesion = adhesion, Spread = spread };
    }
}
