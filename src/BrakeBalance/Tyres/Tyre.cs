namespace BrakeBalance.Tyres;

/// <summary>The tyres of one axle: their loaded radius and their adhesion against the surface's own.</summary>
/// <remarks>
/// <para>k_axle = k · c · (1 − s (N/N_ref − 1)): k the surface's coefficient of adhesion, c the adhesion factor, s the load
/// sensitivity, N the load of one wheel.</para>
/// <para>Source: a straight line through the falling friction of a loaded tyre, common practice.</para>
/// </remarks>
public sealed record Tyre
{
    /// <summary>Distance from hub centre to road under load; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length LoadedRadius { get; init => field = Require.Positive(value); }

    /// <summary>Adhesion of this tyre over the nominal adhesion of the surface [–]; 0.3 to 2; 1 unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 2.</exception>
    public double AdhesionFactor { get; init => field = Require.Between(value, 0.3, 2); } = 1;

    /// <summary>
    /// Fraction of adhesion lost when the wheel load is twice <see cref="ReferenceLoad"/> [–]; 0 to 0.4; 0 unless said.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.4.</exception>
    public double LoadSensitivity { get; init => field = Require.Between(value, 0, 0.4); }

    /// <summary>Load of one wheel at which the adhesion is nominal; above zero; 4 kN unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force ReferenceLoad { get; init => field = Require.Positive(value); } = Force.FromKilonewtons(4);

    /// <summary>Adhesion of this tyre on a surface at a wheel load.</summary>
    /// <param name="surfaceAdhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <param name="wheelLoad">Normal reaction on one wheel; not negative.</param>
    /// <returns>Coefficient of adhesion [–]; never below a tenth of the unloaded value.</returns>
    public double AdhesionOn(double surfaceAdhesion, Force wheelLoad) =>
        AdhesionOn(surfaceAdhesion, wheelLoad.Newtons, ReferenceLoad.Newtons);

    /// <summary>Adhesion over that of the unloaded tyre, below which no load takes it [–].</summary>
    internal const double LeastAdhesion = Tyres.LoadSensitivity.SmallestFactor;

    internal double AdhesionOn(double surfaceAdhesion, double wheelLoadNewtons, double referenceNewtons) =>
        surfaceAdhesion * AdhesionFactor * Math.Max(LeastAdhesion, 1 - LoadSensitivity * (wheelLoadNewtons / referenceNewtons - 1));
}
