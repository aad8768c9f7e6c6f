namespace BrakeBalance.Assist;

/// <summary>A booster that adds force in proportion to the driver's until its supply is used up.</summary>
/// <remarks>
/// <para>
/// Below the cut-in force nothing opens. From there F_out = J + i (F − F₀), but never more than F + S with S the greatest assist less
/// the return spring, and never less than the driver pushes through by himself, F − F_s. Run-out is where J + i (F − F₀) = F + S;
/// with J and F₀ zero that is F = S / (i − 1). Above it the output rises one to one with the input.
/// </para>
/// <para>Assumes slow application, and no difference between applying and releasing.</para>
/// <para>Source: equilibrium of the reaction disc; the run-out condition as in US patent 6,033,038 (seen second-hand).</para>
/// </remarks>
public abstract record PoweredAssist : BrakeAssist
{
    private protected PoweredAssist()
    {
    }

    /// <summary>Output over input while the assist lasts [–]: rise of output per rise of input; 1.05 to 15.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1.05 to 15.</exception>
    public required double BoostRatio { get; init => field = Require.Between(value, 1.05, 15); }

    /// <summary>Input at which the valve opens; not negative; 30 N unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force CutInForce { get; init => field = Require.NotNegative(value); } = Force.FromNewtons(30);

    /// <summary>Output that appears at once when the valve opens, before the reaction disc feels anything; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force JumpIn { get; init => field = Require.NotNegative(value); } = Force.Zero;

    /// <summary>Force of the return spring and seals on the booster's piston; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force ReturnSpringForce { get; init => field = Require.NotNegative(value); } = Force.Zero;

    /// <summary>Most that the supply can add, the return spring not yet taken off; zero when there is no energy.</summary>
    public abstract Force MaximumAssist { get; }

    /// <summary>What the supply adds even with the pedal released, from pressure that cannot escape; zero when none.</summary>
    public virtual Force ResidualAssist => Force.Zero;

    /// <inheritdoc/>
    public override RunOut? RunOut
    {
        get
        {
            (double least, double most) = AssistNewtons();
            if (most <= least)
            {
                return null;
            }

            double input = Math.Max(CutInForce.Newtons, (most - JumpIn.Newtons + (BoostRatio * CutInForce.Newtons)) / (BoostRatio - 1));
            return new RunOut(Force.FromNewtons(input), Force.FromNewtons(Math.Max(0, input + most)));
        }
    }

    /// <inheritdoc/>
    public override Force OutputForce(Force inputForce)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inputForce, Force.Zero);
        double input = inputForce.Newtons;
        (double least, double most) = AssistNewtons();
        double powered = input >= CutInForce.Newtons && input > 0
            ? Math.Min(JumpIn.Newtons + (BoostRatio * (input - CutInForce.Newtons)), input + most)
            : 0;
        return Force.FromNewtons(Math.Max(0, Math.Max(powered, input + least)));
    }

    /// <inheritdoc/>
    public override Force InputForce(Force outputForce)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(outputForce, Force.Zero);
        double output = outputForce.Newtons;
        if (output == 0)
        {
            return Force.Zero;
        }

        (double least, double most) = AssistNewtons();
        double powered = Math.Max(CutInForce.Newtons + (Math.Max(0, output - JumpIn.Newtons) / BoostRatio), output - most);
        return Force.FromNewtons(Math.Max(0, Math.Min(powered, output - least)));
    }

    /// <inheritdoc/>
    public override BrakeAssist WithoutEnergy() => new NoAssist { OpposingForce = ReturnSpringForce };

    private (double Least, double Most) AssistNewtons()
    {
        double spring = ReturnSpringForce.Newtons;
        double least = ResidualAssist.Newtons - spring;
        return (least, Math.Max(least, MaximumAssist.Newtons - spring));
    }
}
