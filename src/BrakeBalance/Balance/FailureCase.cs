using BrakeBalance.Assist;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Balance;

/// <summary>What may be wrong with the brakes at once.</summary>
/// <param name="Id">Short name, stable for scripts.</param>
/// <param name="Name">Name in words.</param>
/// <param name="LostCircuit">The circuit that is lost; null when none is.</param>
/// <param name="AssistLost">Whether the booster gives nothing.</param>
/// <param name="ReserveApplication">
/// With the engine stopped, which application out of the stored energy; null with the engine running.
/// </param>
/// <param name="LoadSensingLost">Whether load-sensing valves have lost their linkage and stand as if the suspension were unloaded.</param>
public sealed record FailureCase(
    string Id, string Name, LostCircuit? LostCircuit = null, bool AssistLost = false, int? ReserveApplication = null,
        bool LoadSensingLost = false)
{
    /// <summary>Everything works.</summary>
    public static FailureCase Sound { get; } = new("sound", "everything works");

    /// <summary>The cases that a car's layout and booster allow, the sound car first.</summary>
    /// <param name="control">Pedal, assist and master cylinder.</param>
    /// <param name="loadSensing">Whether the car has a load-sensing valve.</param>
    /// <param name="reserve">
    /// The stored applications to list, as <see cref="FailureAnalysis.Reserve"/> gives them; at most the first three are.
    /// </param>
    public static IReadOnlyList<FailureCase> Of(BrakeControl control, bool loadSensing, IReadOnlyList<ReserveApplication> reserve)
    {
        ArgumentNullException.ThrowIfNull(control);
        ArgumentNullException.ThrowIfNull(reserve);
        bool assisted = control.Assist is PoweredAssist;
        (LostCircuit Lost, string Id, string Name)[] circuits = control.Layout switch
        {
            CircuitLayout.FrontRear =>
                [(Balance.LostCircuit.Front, "front-lost", "front circuit lost"),
                (Balance.LostCircuit.Rear, "rear-lost", "rear circuit lost")],
            CircuitLayout.Diagonal => [(Balance.LostCircuit.Diagonal, "diagonal-lost", "one diagonal circuit lost")],
            _ => [(Balance.LostCircuit.All, "all-lost", "the only circuit lost")],
        };
        return
        [
            Sound,
            .. reserve.Take(3).Select(application => new FailureCase($"engine-off-{application.Number}",
                $"engine off, application {application.Number} out of the reserve", ReserveApplication: application.Number)),
            .. assisted ? [new("assist-lost", "no assist", AssistLost: true)] : (FailureCase[])[],
            .. loadSensing
                ? [new("load-sensing-lost", "linkage of the load-sensing valve lost", LoadSensingLost: true)] : (FailureCase[])[],
            .. circuits.SelectMany(circuit => assisted && circuit.Lost != Balance.LostCircuit.All
                ? [new(circuit.Id, circuit.Name, circuit.Lost),
                    new(circuit.Id + "-and-assist-lost", circuit.Name + ", no assist", circuit.Lost, AssistLost: true)]
                : (FailureCase[])[new(circuit.Id, circuit.Name, circuit.Lost)]),
        ];
    }
}

/// <summary>A circuit that has lost its fluid.</summary>
public enum LostCircuit
{
    /// <summary>The front axle's.</summary>
    Front,

    /// <summary>The rear axle's.</summary>
    Rear,

    /// <summary>One of two diagonal circuits: one front and one rear wheel.</summary>
    Diagonal,

    /// <summary>The only one.</summary>
    All,
}
