using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Teaching;

/// <summary>The exercises of the course: three a lesson, computed by the assembly from the student's invented car.</summary>
public static class Exercises
{
    private const double G = Gravity.StandardMetresPerSecondSquared;
    private const double DiscSpecificHeat = 460;

    /// <summary>All exercises of a student, lesson by lesson, easy to hard.</summary>
    /// <param name="number">Class seed and student number.</param>
    /// <param name="units">The system of units of questions and steps.</param>
    /// <returns>Thirty exercises.</returns>
    public static IReadOnlyList<Exercise> For(ClassNumber number, UnitSystem units = UnitSystem.Si) => For(ExerciseCar.For(number), units);

    /// <summary>All exercises on a car, lesson by lesson, easy to hard.</summary>
    /// <param name="car">The car.</param>
    /// <param name="units">The system of units of questions and steps.</param>
    /// <returns>Thirty exercises.</returns>
    public static IReadOnlyList<Exercise> For(ExerciseCar car, UnitSystem units = UnitSystem.Si)
    {
        var u = new SheetUnits(units == UnitSystem.Us);
        return [.. StaticLoad(car, u), .. LoadTransfer(car, u), .. IdealCurve(car, u), .. FixedRatio(car, u), .. Knee(car, u),
            .. Utilisation(car, u), .. Effort(car, u), .. FailedAssist(car, u), .. RearLock(car, u), .. Heat(car, u)];
    }

    private static Exercise[] StaticLoad(ExerciseCar car, SheetUnits u)
    {
        PerAxle<Force> loads = car.Balance.StaticAxleLoads;
        Length wheelbase = car.Vehicle.Wheelbase;
        Mass box = Mass.FromKilograms(80);
        Length overhang = Length.FromMeters(0.4);
        double total = car.LoadCase.Mass.Kilograms + box.Kilograms;
        double a = ((car.LoadCase.Mass.Kilograms * car.LoadCase.FrontAxleToCentreOfGravity.Meters)
            + (box.Kilograms * (wheelbase + overhang).Meters)) / total;
        LoadCase loaded = car.LoadCase with { Mass = Mass.FromKilograms(total), FrontAxleToCentreOfGravity = Length.FromMeters(a) };
        Force rear = new BalanceModel(car.Vehicle, loaded).StaticAxleLoads.Rear;
        return
        [
            Make("static-load", 1, "What is the load on the **front axle** (both wheels) at rest, as a force?",
                ExerciseAnswer.Of(loads.Front, ("the rear axle was taken", loads.Rear),
                    ("the load of one wheel was given", loads.Front / 2),
                    u.Us ? ("the pounds were multiplied by g", loads.Front * u.G) : ("the mass was not multiplied by g", loads.Front / G)),
                $@"$P_1 = \psi_1 m g = {N(car.FrontShare)} \cdot {u.Weight(car.LoadCase.Mass)} "
                    + $@"= {u.Tex(loads.Front)}$"),
            Make("static-load", 2, "How far behind the front axle does the centre of gravity lie?",
                ExerciseAnswer.Of(car.LoadCase.FrontAxleToCentreOfGravity,
                    ("the distance to the rear axle was given", wheelbase - car.LoadCase.FrontAxleToCentreOfGravity)),
                $@"Moments about the front axle: $a = (1 - \psi_1) E = {N(1 - car.FrontShare)} \cdot {u.N(wheelbase)} = "
                    + $@"{u.Tex(car.LoadCase.FrontAxleToCentreOfGravity)}$"),
            Make("static-load", 3, $"A box of {u.Text(box)} is hung {u.Text(overhang)} **behind the rear axle**. What is the "
                + "rear axle's load now, as a force?",
                ExerciseAnswer.Of(rear, ("the box's overhang was left out", loads.Rear + Force.FromNewtons(box.Kilograms * G)),
                    ("the front axle was taken", loads.Front - Force.FromNewtons(box.Kilograms * G * overhang.Meters / wheelbase.Meters)),
                    ("the box was left out", loads.Rear)),
                $@"Moments about the front axle: $P_2 = \frac{{m g a + m_p g (E + {u.N(overhang)})}}{{E}} = {u.Tex(rear)}$")
                .From("static-load-2", metres => G * ((car.LoadCase.Mass.Kilograms * metres)
                    + (box.Kilograms * (wheelbase + overhang).Meters)) / wheelbase.Meters),
        ];
    }

    private static Exercise[] LoadTransfer(ExerciseCar car, SheetUnits u)
    {
        double z = car.BrakingRate;
        PerAxle<Force> still = car.Balance.StaticAxleLoads;
        PerAxle<Force> moving = car.Balance.NormalReactions(z);
        Force shift = moving.Front - still.Front;
        double target = car.LightRearShare;
        double rearShare = 1 - car.FrontShare;
        double h = car.LoadCase.CentreOfGravityHeight / car.Vehicle.Wheelbase;
        double rate = (rearShare - target) / h;
        return
        [
            Make("load-transfer", 1,
                $"What is the load that moves from the rear to the front axle at a deceleration of {N(z)} g, as a force?",
                ExerciseAnswer.Of(shift, ("the deceleration was left out", shift / z), ("half of it was given, one wheel", shift / 2),
                    ("height and wheelbase were swapped", shift / (h * h))),
                $@"$\Delta N = z m g \frac{{h}}{{E}} = {N(z)} \cdot {u.Weight(car.LoadCase.Mass)} \cdot "
                    + $@"\frac{{{u.N(car.LoadCase.CentreOfGravityHeight)}}}{{{u.N(car.Vehicle.Wheelbase)}}} = {u.Tex(shift)}$"),
            Make("load-transfer", 2, $"What is the normal reaction on the **front axle** at a deceleration of {N(z)} g?",
                ExerciseAnswer.Of(moving.Front, ("the static load was used", still.Front),
                    ("the transfer was taken off, not added", still.Front - shift), ("the rear axle was taken", moving.Rear)),
                $@"$N_1 = P_1 + z m g \frac{{h}}{{E}} = {u.N(still.Front)} + {u.N(shift)} = "
                    + $@"{u.Tex(moving.Front)}$").From("load-transfer-1", newtons => still.Front.Newtons + newtons),
            Make("load-transfer", 3,
                $"At what deceleration, in g, does the rear axle carry only {N(target * 100)} % of the weight?",
                ExerciseAnswer.Of(rate, ("the front share was used", (car.FrontShare - target) / h),
                    ("the deceleration at which the rear lifts off was given", rearShare / h),
                    ("height and wheelbase were swapped", (rearShare - target) * h)),
                $@"${N(target)} = (1 - \psi_1) - z \frac{{h}}{{E}}$, so $z = \frac{{{N(rearShare)} - {N(target)}}}{{{N(h)}}} = {N(rate)}$"),
        ];
    }

    private static Exercise[] IdealCurve(ExerciseCar car, SheetUnits u)
    {
        double z = car.BrakingRate;
        PerAxle<Force> ideal = car.Balance.IdealForces(z);
        PerAxle<Force> still = car.Balance.StaticAxleLoads;
        Force weight = car.Balance.Weight;
        double rearShare = ideal.Rear / (ideal.Front + ideal.Rear);
        double a = car.LoadCase.FrontAxleToCentreOfGravity.Meters;
        double h = car.LoadCase.CentreOfGravityHeight.Meters;
        Force greatest = weight * (a * a / (4 * h * car.Vehicle.Wheelbase.Meters));
        return
        [
            Make("ideal-curve", 1, $"Which share of the braking force should the **rear** axle give at a deceleration of {N(z)} g, "
                + "ideally?",
                ExerciseAnswer.Of(rearShare, ("the front share was given", 1 - rearShare),
                    ("the static share was used", 1 - car.FrontShare),
                    ("the transfer was added, not taken off", 1 - car.FrontShare + z * h / car.Vehicle.Wheelbase.Meters)),
                $@"$\varphi_2 = (1 - \psi_1) - z \frac{{h}}{{E}} = {N(rearShare)}$"),
            Make("ideal-curve", 2, $"What is the ideal braking force of the **front** axle at a deceleration of {N(z)} g?",
                ExerciseAnswer.Of(ideal.Front, ("the static load was used", still.Front * z), ("the rear axle was taken", ideal.Rear),
                    ("the force of the whole car was given", weight * z)),
                $@"$T_1 = z N_1 = z \left(P_1 + z m g \frac{{h}}{{E}}\right) = {N(z)} \cdot {u.N(ideal.Front / z)} "
                    + $@"= {u.Tex(ideal.Front)}$").From("load-transfer-2", newtons => z * newtons),
            Make("ideal-curve", 3, "The ideal rear braking force rises with the deceleration, then falls again. What is its highest value?",
                ExerciseAnswer.Of(greatest, ("the factor one half of the summit was lost", greatest * 2),
                    ("the distance to the rear axle was used",
                    weight * (Math.Pow(car.Vehicle.Wheelbase.Meters - a, 2) / (4 * h * car.Vehicle.Wheelbase.Meters)))),
                $@"$T_2 = z m g \frac{{a - z h}}{{E}}$ is greatest at $z = \frac{{a}}{{2h}} = {N(a / (2 * h))}$",
                $@"$T_2 = m g \frac{{a^2}}{{4 h E}} = {u.Tex(greatest)}$")
                .From("static-load-2", metres => weight.Newtons * metres * metres / (4 * h * car.Vehicle.Wheelbase.Meters)),
        ];
    }

    private static Exercise[] FixedRatio(ExerciseCar car, SheetUnits u)
    {
        Torque torque = car.Front.BrakingTorque(car.LinePressure);
        double rearShare = car.RearForceShare;
        double critical = car.WithoutValve.IdealCrossings()[0].BrakingRate;
        double still = 1 - car.FrontShare;
        double h = car.LoadCase.CentreOfGravityHeight / car.Vehicle.Wheelbase;
        return
        [
            Make("fixed-ratio", 1, $"What is the braking torque of **one front wheel** at a line pressure of {u.Text(car.LinePressure)}?",
                ExerciseAnswer.Of(torque, ("the pistons of both sides were counted", torque * 2), ("one pad only was counted", torque / 2),
                    ("the piston's diameter was taken for its radius", torque * 4)),
                $@"$A_1 = \frac{{\pi}}{{4}} d_1^2 = {u.Tex(car.Front.PistonArea)}$",
                $@"$M_1 = 2 \mu p_1 A_1 r_1 = {u.Tex(torque)}$"),
            Make("fixed-ratio", 2, "Which share of the braking "
                + "force does the **rear** axle give when both lines have the same pressure (no valve)?",
                ExerciseAnswer.Of(rearShare, ("the front share was given", 1 - rearShare),
                    ("rear over front was given", rearShare / (1 - rearShare)),
                    ("piston diameters were used in place of areas",
                    Share(car.RearPiston / car.FrontPiston * (car.Rear.EffectiveRadius / car.Front.EffectiveRadius)))),
                $@"$\frac{{T_2}}{{T_1}} = \frac{{d_2^2 r_2}}{{d_1^2 r_1}} = {N(rearShare / (1 - rearShare))}$, "
                    + $@"so $\varphi_2 = {N(rearShare)}$"),
            Make("fixed-ratio", 3, "At what deceleration, in g, do both axles use the same adhesion when there is no valve?",
                ExerciseAnswer.Of(critical,
                    ("the front shares were used",
                    Math.Abs(car.FrontShare - (1 - rearShare)) / h * (car.FrontShare > 1 - rearShare ? 1 : -1)),
                    ("height and wheelbase were swapped", (still - rearShare) * h), ("the installed share was left out", still / h)),
                @"$\psi_2 - z \frac{h}{E} = \varphi_2$, so "
                    + $@"$z = \frac{{{Fine(still)} - {Fine(rearShare)}}}{{{Fine(h)}}} = {N(critical)}$")
                .From("fixed-ratio-2", share => (still - share) / h),
        ];
    }

    private static Exercise[] Knee(ExerciseCar car, SheetUnits u)
    {
        Pressure inlet = car.LinePressure;
        Pressure knee = car.Valve.Knee;
        double slope = car.Valve.Slope;
        Pressure outlet = car.Valve.OutletPressure(inlet);
        BalancePoint point = car.Balance.At(knee);
        return
        [
            Make("knee", 1, $"What is the **rear** line pressure when the front line has {u.Text(inlet)}?",
                ExerciseAnswer.Of(outlet, ("the valve was left out", inlet), ("the slope was applied to the whole pressure", inlet * slope),
                    ("the slope was applied below the knee", knee + ((inlet - knee) * slope)),
                    ("the slope was applied to the whole pressure and added to the knee", knee + (inlet * slope))),
                inlet > knee ? $@"Above the knee: $p_2 = p_k + s (p_1 - p_k) = {u.N(knee)} + {N(slope)} ({u.N(inlet)} "
                    + $@"- {u.N(knee)}) = {u.Tex(outlet)}$"
                    : $@"Below the knee of ${u.Tex(knee)}$ the valve is open: $p_2 = p_1 = {u.Tex(outlet)}$"),
            Make("knee", 2, "What is the braking force of the **front axle** (both wheels) at the knee?",
                ExerciseAnswer.Of(point.BrakingForces.Front, ("one wheel only was counted", point.BrakingForces.Front / 2),
                    ("the rear axle was taken", point.BrakingForces.Rear),
                    ("the pistons of both sides were counted", point.BrakingForces.Front * 2)),
                $@"$T_1 = 2 \cdot \frac{{2 \mu p_k A_1 r_1}}{{R}} = \frac{{4 \cdot {N(car.Front.FrictionCoefficient)} \cdot "
                    + $@"{u.ForceOverArea(knee)} \cdot {u.N(car.Front.PistonArea)} \cdot "
                    + $@"{u.N(car.Front.EffectiveRadius)}}}{{{u.N(car.Vehicle.Tyres.Front.LoadedRadius)}}} "
                    + $@"= {u.Tex(point.BrakingForces.Front)}$"),
            Make("knee", 3, "At what deceleration, in g, is the knee reached?",
                ExerciseAnswer.Of(point.BrakingRate, ("the front axle alone was counted", point.BrakingForces.Front / car.Balance.Weight),
                    (u.Us ? "the force was divided by the mass in slugs" : "the force was divided by the mass without g",
                        point.BrakingRate * u.G),
                    ("one wheel an axle was counted", point.BrakingRate / 2)),
                $@"$z = \frac{{T_1 + T_2}}{{m g}} = \frac{{{u.N(point.BrakingForces.Front)} "
                    + $@"+ {u.N(point.BrakingForces.Rear)}}}{{{u.N(car.Balance.Weight)}}} = {N(point.BrakingRate)}$")
                .From("knee-2", newtons => (newtons + point.BrakingForces.Rear.Newtons) / car.Balance.Weight.Newtons),
        ];
    }

    private static Exercise[] Utilisation(ExerciseCar car, SheetUnits u)
    {
        double z = car.BrakingRate;
        BalancePoint point = car.WithoutValve.AtRate(z)!;
        PerAxle<Force> still = car.Balance.StaticAxleLoads;
        LockUp lockUp = car.WithoutValve.FirstLockUp(car.Adhesion)!;
        double front = point.AdhesionUtilisation.Front!.Value;
        double rear = point.AdhesionUtilisation.Rear!.Value;
        return
        [
            Make("adhesion-utilisation", 1, "Without a valve: how much adhesion does the **front** axle use at a deceleration of "
                + $"{N(z)} g?",
                ExerciseAnswer.Of(front, ("the static load was used", point.BrakingForces.Front / still.Front),
                    ("the rear axle was taken", rear), ("the deceleration was given", z)),
                $@"$f_1 = \frac{{T_1}}{{N_1}} = "
                    + $@"\frac{{{u.N(point.BrakingForces.Front)}}}{{{u.N(point.NormalReactions.Front)}}} = {N(front)}$")
                .From("fixed-ratio-2", share => z * (1 - share) * car.Balance.Weight / point.NormalReactions.Front),
            Make("adhesion-utilisation", 2, $"Without a valve: how much adhesion does the **rear** axle use at a deceleration of {N(z)} g?",
                ExerciseAnswer.Of(rear, ("the static load was used", point.BrakingForces.Rear / still.Rear),
                    ("the front axle was taken", front),
                    ("the transfer was added to the rear",
                    point.BrakingForces.Rear / (still.Rear + (still.Rear - point.NormalReactions.Rear)))),
                $@"$f_2 = \frac{{T_2}}{{N_2}} "
                    + $@"= \frac{{{u.N(point.BrakingForces.Rear)}}}{{{u.N(point.NormalReactions.Rear)}}} = {N(rear)}$")
                .From("fixed-ratio-2", share => z * share * car.Balance.Weight / point.NormalReactions.Rear),
            Make("adhesion-utilisation", 3,
                $"Without a valve, on a surface with an adhesion of {N(car.Adhesion)}: what is the braking efficiency at the first "
                    + "lock-up?",
                ExerciseAnswer.Of(lockUp.Efficiency, ("the deceleration at lock-up was given", lockUp.At.BrakingRate),
                    ("the other axle was taken", Other(car, lockUp, car.Adhesion) / car.Adhesion)),
                $@"The {(lockUp.First == Axle.Front ? "front" : "rear")} axle locks first, at $z = {N(lockUp.At.BrakingRate)}$",
                $@"$\eta = \frac{{z}}{{k}} = {N(lockUp.Efficiency)}$"),
        ];
    }

    private static Exercise[] Effort(ExerciseCar car, SheetUnits u)
    {
        Force rod = car.Pedal.InputRodForce(car.PedalForce);
        double ratio = rod / car.PedalForce;
        Area bore = Area.FromCircleDiameter(car.MasterBore);
        Pressure bare = rod / bore;
        Force boosted = car.Booster.OutputForce(rod);
        Pressure assisted = boosted / bore;
        bool ranOut = rod > car.Booster.RunOut!.Value.InputForce;
        return
        [
            Make("effort", 1, $"What is the force in the **input rod** when the driver pushes with {u.Text(car.PedalForce)}?",
                ExerciseAnswer.Of(rod, ("the force was divided by the pedal ratio", car.PedalForce / ratio),
                    ("the pedal ratio was left out", car.PedalForce)),
                $@"$F_r = i_p F = {N(ratio)} \cdot {u.N(car.PedalForce)} = {u.Tex(rod)}$"),
            Make("effort", 2, $"**Without** assist: what is the line pressure at a pedal force of {u.Text(car.PedalForce)}?",
                ExerciseAnswer.Of(bare, ("the bore was taken for a radius", bare / 4), ("the pedal ratio was left out", bare / ratio),
                    ("the assist was counted in", assisted)),
                $@"$p_1 = \frac{{i_p F}}{{A_m}} = \frac{{{u.Tex(rod)}}}{{{u.Tex(bore)}}} "
                    + $@"= {u.Tex(bare)}$").From("effort-1", newtons => newtons / bore.SquareMeters),
            Make("effort", 3, $"**With** assist: what is the line pressure at a pedal force of {u.Text(car.PedalForce)}? Mind the run-out.",
                ExerciseAnswer.Of(assisted, ("the assist was left out", bare),
                    ("the run-out was overlooked", rod * car.Booster.BoostRatio / bore), ("the bore was taken for a radius", assisted / 4)),
                $@"Greatest assist $F_a = \Delta p A_a = {u.Tex(car.Booster.MaximumAssist)}$; "
                    + $@"{(ranOut ? "the booster has run out" : "the booster has not run out")}",
                $@"$F_o = {(ranOut ? @"i_p F + F_a" : @"b\, i_p F")} = {u.Tex(boosted)}$, "
                    + $@"$p_1 = \frac{{F_o}}{{A_m}} = {u.Tex(assisted)}$")
                .From("effort-1", newtons => car.Booster.OutputForce(Force.FromNewtons(Math.Max(0, newtons))).Newtons / bore.SquareMeters),
        ];
    }

    private static Exercise[] FailedAssist(ExerciseCar car, SheetUnits u)
    {
        Force assist = car.Booster.MaximumAssist;
        Area bore = Area.FromCircleDiameter(car.MasterBore);
        Force needed = car.Pedal.PedalForce(car.LinePressure * bore);
        double ratio = car.LinePressure * bore / needed;
        Force limit = Force.FromNewtons(500);
        Pressure line = car.Pedal.InputRodForce(limit) / bore;
        BalancePoint point = car.Balance.At(line);
        return
        [
            Make("failed-assist", 1, "What is the booster's **greatest assist force** at the vacuum given?",
                ExerciseAnswer.Of(assist, ("the effective share of the area was left out", assist / car.Booster.EffectiveAreaShare),
                    ("the diameter was taken for a radius", assist * 4)),
                $@"$F_a = \Delta p \cdot 0.85 \frac{{\pi}}{{4}} D^2 = {u.Tex(assist)}$"),
            Make("failed-assist", 2, $"The assist is gone. How hard must the driver push for a line pressure of "
                + $"{u.Text(car.LinePressure)}?",
                ExerciseAnswer.Of(needed, ("the pedal ratio was left out", needed * ratio),
                    ("the pedal ratio was used twice", needed / ratio), ("the bore was taken for a radius", needed * 4)),
                $@"$F = \frac{{p_1 A_m}}{{i_p}} = \frac{{{u.ForceOverArea(car.LinePressure)} \cdot "
                    + $@"{u.N(bore)}}}{{{N(ratio)}}} = {u.Tex(needed)}$"),
            Make("failed-assist", 3, $"The assist is gone. What deceleration, in g, does a pedal force of {u.Text(limit)} give, valve "
                + "included?",
                ExerciseAnswer.Of(point.BrakingRate, ("the valve was left out", car.WithoutValve.At(line).BrakingRate),
                    ("the front axle alone was counted", point.BrakingForces.Front / car.Balance.Weight),
                    ("the pedal ratio was left out", car.Balance.At(line / ratio).BrakingRate)),
                $@"$p_1 = \frac{{i_p \cdot {u.N(limit)}}}{{A_m}} = {u.Tex(line)}$, "
                    + (line > car.Valve.Knee ? "above the knee, so in the rear line" : "below the knee, so in the rear line too")
                    + $@" ${u.Tex(point.LinePressures.Rear)}$",
                $@"$z = \frac{{T_1 + T_2}}{{m g}} = {N(point.BrakingRate)}$"),
        ];
    }

    private static Exercise[] RearLock(ExerciseCar car, SheetUnits u)
    {
        BalanceModel bare = car.WithoutValve;
        double h = car.LoadCase.CentreOfGravityHeight / car.Vehicle.Wheelbase;
        double share = car.RearForceShare;
        FixedRatio ratio = car.WithShare(share);
        double rearRate = ratio.RearLockRate(car.Adhesion);
        double crossing = bare.IdealCrossings()[0].BrakingRate;
        LockUp first = bare.FirstLockUp(car.OtherAdhesion)!;
        bool rearFirst = first.First == Axle.Rear;
        (Pressure front, Pressure rear) = car.PressuresAt(car.DryAdhesion);
        double slope = car.Valve.Slope;
        Pressure knee = car.KneeAt(car.DryAdhesion);
        return
        [
            Make("rear-lock", 1, $"Without a valve, adhesion {N(car.Adhesion)}: at what deceleration, in g, would the "
                + "**rear** axle lock if the front kept rolling?",
                ExerciseAnswer.Of(rearRate, ("the static load was used", car.Adhesion * (1 - car.FrontShare) / share),
                    ("the adhesion was given", car.Adhesion), ("the front axle was taken", ratio.FrontLockRate(car.Adhesion) ?? 0)),
                $@"$z_2 = \frac{{k \psi_2}}{{\varphi_2 + k h/E}} = \frac{{{N(car.Adhesion)} \cdot {N(1 - car.FrontShare)}}}{{{N(share)} + "
                    + $@"{N(car.Adhesion * h)}}} = {N(rearRate)}$")
                .From("fixed-ratio-2", given => car.WithShare(Math.Clamp(given, 0, 1)).RearLockRate(car.Adhesion)),
            Make("rear-lock", 2,
                $"Without a valve, adhesion {N(car.OtherAdhesion)}: at what deceleration, in g, does the **first** axle lock?",
                ExerciseAnswer.Of(first.At.BrakingRate, ("the other axle was taken", Other(car, first, car.OtherAdhesion)),
                    ("the adhesion was given", car.OtherAdhesion)),
                $@"The {(rearFirst ? "rear axle leads above" : "front axle leads below")} $z = {N(crossing)}$, so it locks first: "
                    + (rearFirst ? @"$z_2 = \frac{k \psi_2}{\varphi_2 + k h/E} = " : @"$z_1 = \frac{k \psi_1}{\varphi_1 - k h/E} = ")
                    + $"{N(first.At.BrakingRate)}$. {(rearFirst ? "That spins the car." : "The car runs straight on.")}")
                .From("fixed-ratio-2", given => car.WithShare(Math.Clamp(given, 0, 1)) is var wrong
                    && wrong.FrontLockRate(car.OtherAdhesion) is { } front
                    ? Math.Min(front, wrong.RearLockRate(car.OtherAdhesion)) : double.NaN),
            Make("rear-lock", 3, "Which **knee** makes both axles lock together "
                + $"at an adhesion of {N(car.DryAdhesion)}, the slope staying at {N(slope)}?",
                ExerciseAnswer.Of(knee, ("the slope was left out", rear), ("the front pressure at lock-up was given", front),
                    ("the slope was applied from zero", rear / slope)),
                $@"Both at their limit at $z = k$: $p_1 = {u.Tex(front)}$, $p_2 = {u.Tex(rear)}$",
                $@"$p_k = \frac{{p_2 - s p_1}}{{1 - s}} = {u.Tex(knee)}$"),
        ];
    }

    private static Exercise[] Heat(ExerciseCar car, SheetUnits u)
    {
        double speed = car.Speed.MetersPerSecond;
        Energy energy = Energy.FromJoules(0.5 * car.LoadCase.Mass.Kilograms * speed * speed);
        BalancePoint point = car.Balance.AtRate(car.BrakingRate)!;
        // To the digits that the sheet gives.
        double frontShare = Math.Round(point.BrakingForces.Front / (point.BrakingForces.Front + point.BrakingForces.Rear), 3);
        double RiseOf(double joules) => joules * frontShare / 2 / (car.DiscMass.Kilograms * DiscSpecificHeat);
        double seconds = speed / (car.BrakingRate * G);
        double WattsOf(double joules) => joules * frontShare / seconds;
        (double rise, double watts) = (RiseOf(energy.Joules), WattsOf(energy.Joules));
        Power Watts(double value) => Power.FromWatts(value);
        TemperatureDelta Rise(double kelvins) => TemperatureDelta.FromDegreesCelsius(kelvins);
        return
        [
            Make("heat", 1, $"How much energy must the brakes take in a stop from {u.Text(car.Speed)}?",
                ExerciseAnswer.Of(
                    energy, u.Us ? ("the pounds were not divided by g", energy * u.G) : ("the speed was used in km/h", energy * 12.96),
                    ("the factor one half was lost", energy * 2)),
                $@"$W = \frac{{1}}{{2}} m v^2 = \frac{{1}}{{2}} \cdot {u.Inertia(car.LoadCase.Mass)} \cdot {u.PerSecond(car.Speed)}^2 "
                    + $@"= {u.Tex(energy)}$"),
            Make("heat", 2, $"The front axle takes {N(frontShare)} of it. By how much does **one front disc** "
                + $"of {u.Text(car.DiscMass)} warm up in that stop, nothing lost to the air? "
                + $"(Specific heat {u.SpecificHeat} {u.SpecificHeatUnit}.)",
                ExerciseAnswer.Of(Rise(rise), ("both discs' heat was put into one", Rise(rise * 2)),
                    ("the rear axle's share was forgotten", Rise(rise / frontShare)),
                    ("a quarter of the whole was taken for each wheel",
                    Rise(energy.Joules / 4 / (car.DiscMass.Kilograms * DiscSpecificHeat)))),
                $@"$\Delta\vartheta = \frac{{W \cdot {N(frontShare)} / 2}}{{m_h c}} "
                    + $@"= \frac{{{u.Work(energy * frontShare / 2)}}}{{{u.N(car.DiscMass)} \cdot {u.SpecificHeat}}} = {u.Tex(Rise(rise))}$")
                .From("heat-1", RiseOf),
            Make("heat", 3, "What is the **mean power** that the front axle's brakes turn into heat in that stop, at a constant "
                + $"deceleration of {N(car.BrakingRate)} g?",
                ExerciseAnswer.Of(Watts(watts), ("the whole car was taken", Watts(watts / frontShare)),
                    ("the power at the start was given", Watts(watts * 2)),
                    ("the deceleration was not multiplied by g", Watts(watts / u.G))),
                $@"$t = \frac{{v}}{{z g}} = {N(seconds)}\ \text{{s}}$, $\frac{{W \cdot {N(frontShare)}}}{{{u.WorkPerPower}t}} = "
                    + $@"{u.Tex(Watts(watts))}$").From("heat-1", WattsOf),
        ];
    }

    private static double Other(ExerciseCar car, LockUp lockUp, double adhesion)
    {
        FixedRatio ratio = car.WithShare(car.RearForceShare);
        return lockUp.First == Axle.Rear
            ? ratio.FrontLockRate(adhesion) ?? car.WithoutValve.GreatestRate(adhesion) : ratio.RearLockRate(adhesion);
    }

    private static Exercise Make(string lesson, int level, string question, ExerciseAnswer answer, params string[] steps) =>
        new(Invariant.Text($"{lesson}-{level}"), Lesson.Of(lesson), level, question, answer, steps);

    private static double Share(double rearOverFront) => rearOverFront / (1 + rearOverFront);

    private static string N(double value) => SheetUnits.N(value);

    // A difference of two like numbers needs more digits than its result is given to.
    private static string Fine(double value) => value.ToString("0.00000", CultureInfo.InvariantCulture);
}
