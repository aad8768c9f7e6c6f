namespace BrakeBalance.Tyres;

/// <summary>What a tyre has left in one direction while it is used in the other.</summary>
/// <remarks>
/// <para>(F_x/F_x,max)² + (F_y/F_y,max)² = 1.</para>
/// <para>Source: common practice; Wong, Theory of Ground Vehicles, ch. 1, friction ellipse concept (from memory).</para>
/// </remarks>
public static class FrictionEllipse
{
    /// <summary>Force that may still be used in the other direction.</summary>
    /// <param name="used">Force used in one direction; its sign does not matter.</param>
    /// <param name="limitThatWay">Greatest force in that direction alone; above zero.</param>
    /// <param name="limitOtherWay">Greatest force in the other direction alone; above zero.</param>
    /// <returns>Force available in the other direction, not negative; null when more is used than the tyre has.</returns>
    public static Force? Remaining(Force used, Force limitThatWay, Force limitOtherWay)
    {
        double share = used.Newtons / Require.Positive(limitThatWay, nameof(limitThatWay)).Newtons;
        Require.Positive(limitOtherWay, nameof(limitOtherWay));
        return share is >= -1 and <= 1 ? Force.FromNewtons(Math.Sqrt(1 - share * share) * limitOtherWay.Newtons) : null;
    }

    /// <summary>Fraction of the tyre's adhesion that two forces use together.</summary>
    /// <param name="longitudinal">Force along the wheel.</param>
    /// <param name="lateral">Force across the wheel.</param>
    /// <param name="longitudinalLimit">Greatest force along the wheel alone; above zero.</param>
    /// <param name="lateralLimit">Greatest force across the wheel alone; above zero.</param>
    /// <returns>Utilised fraction [–]; above 1 the wheel slides.</returns>
    public static double Utilisation(Force longitudinal, Force lateral, Force longitudinalLimit, Force lateralLimit)
    {
        double x = longitudinal.Newtons / Require.Positive(longitudinalLimit, nameof(longitudinalLimit)).Newtons;
        double y = lateral.Newtons / Require.Positive(lateralLimit, nameof(lateralLimit)).Newtons;
        return Math.Sqrt(x * x + y * y);
    }
}
