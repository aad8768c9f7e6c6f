namespace BrakeBalance.Balance;

/// <summary>What there is on the car to set the balance with.</summary>
public enum SettingVariable
{
    /// <summary>The knee of the proportioning valve in the rear line.</summary>
    Knee,

    /// <summary>The knee of a valve that is not there yet.</summary>
    AddedKnee,

    /// <summary>The balance bar.</summary>
    BalanceBar,
}
