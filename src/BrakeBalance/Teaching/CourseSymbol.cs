namespace BrakeBalance.Teaching;

/// <summary>A symbol of the course: one letter, one meaning, in every lesson, sheet and key.</summary>
/// <param name="Text">As it stands in tables and on axes, such as <c>ψ₁, ψ₂</c>.</param>
/// <param name="Formula">As it stands in formulas, such as <c>\psi_i</c>; an index i is 1 at the front axle and 2 at the rear.</param>
/// <param name="Meaning">What it stands for.</param>
/// <param name="Unit">Its SI unit; – for a pure number.</param>
/// <remarks>
/// E, h, z, k, P, N, T, f and g are those of UN Regulation No. 13-H, Annex 5 (from memory), and of Directive 71/320/EEC, Annex II,
/// Appendix (read in the consolidated text), which so come first; S and V are those of 49 CFR 571.135.
/// </remarks>
public sealed record CourseSymbol(string Text, string Formula, string Meaning, string Unit)
{
    /// <summary>All symbols, in the order of the course.</summary>
    public static IReadOnlyList<CourseSymbol> All { get; } =
    [
        new("m", "m", "mass of the car with its driver", "kg"),
        new("g", "g", "acceleration of free fall", "m/s²"),
        new("E", "E", "wheelbase", "m"),
        new("a", "a", "distance of the centre of gravity behind the front axle", "m"),
        new("h", "h", "height of the centre of gravity", "m"),
        new("P₁, P₂", "P_i", "load of the front, rear axle at rest", "N"),
        new("ψ₁, ψ₂", @"\psi_i", "share of the weight on the front, rear axle at rest", "–"),
        new("mₚ", "m_p", "mass of a box", "kg"),
        new("z", "z", "deceleration as a multiple of g", "–"),
        new("ΔN", @"\Delta N", "load that moves from the rear to the front axle", "N"),
        new("N₁, N₂", "N_i", "normal reaction of the front, rear axle while braking", "N"),
        new("T₁, T₂", "T_i", "braking force of the front, rear axle", "N"),
        new("φ₁, φ₂", @"\varphi_i", "share of the braking force at the front, rear axle", "–"),
        new("k", "k", "adhesion of the road", "–"),
        new("d₁, d₂", "d_i", "diameter of a caliper's piston, front, rear", "m"),
        new("A₁, A₂", "A_i", "area of the pistons on one side of a caliper, front, rear", "m²"),
        new("μ", @"\mu", "friction of the pads", "–"),
        new("p₁, p₂", "p_i", "pressure in the front, rear line, gauge", "Pa"),
        new("r₁, r₂", "r_i", "effective radius of the disc, front, rear", "m"),
        new("M₁, M₂", "M_i", "braking torque of one front, rear wheel", "N m"),
        new("R", "R", "loaded radius of the tyres", "m"),
        new("zₑ", "z_e", "deceleration at which both axles use the same adhesion", "–"),
        new("pₖ", "p_k", "knee: pressure from which the valve acts, gauge", "Pa"),
        new("s", "s", "slope of the valve above its knee", "–"),
        new("zₖ", "z_k", "deceleration at the knee", "–"),
        new("f₁, f₂", "f_i", "adhesion used by the front, rear axle", "–"),
        new("η", @"\eta", "braking efficiency", "–"),
        new("F", "F", "force on the pedal", "N"),
        new("iₚ", "i_p", "pedal ratio", "–"),
        new("Fᵣ", "F_r", "force in the input rod", "N"),
        new("Fₒ", "F_o", "force in the output rod of the booster", "N"),
        new("Fₐ", "F_a", "greatest assist force of the booster", "N"),
        new("dₘ", "d_m", "bore of the master cylinder", "m"),
        new("Aₘ", "A_m", "area of that bore", "m²"),
        new("b", "b", "booster: output over input below run-out", "–"),
        new("Δp", @"\Delta p", "vacuum in the booster", "Pa"),
        new("D", "D", "diameter of the booster's diaphragm", "m"),
        new("Aₐ", "A_a", "effective area of the diaphragm", "m²"),
        new("S", "S", "stopping distance, as the rule has it", "m"),
        new("V", "V", "speed in km/h, as the rule has it", "km/h"),
        new("z₁, z₂", "z_i", "deceleration at which the front, rear axle locks", "–"),
        new("W", "W", "energy of the stop", "J"),
        new("v", "v", "speed before the stop", "m/s"),
        new("t", "t", "time of the stop", "s"),
        new("mₕ", "m_h", "mass of one disc", "kg"),
        new("c", "c", "specific heat of the disc", "J/(kg K)"),
        new("Δϑ", @"\Delta\vartheta", "temperature rise of the disc", "K"),
    ];
}
