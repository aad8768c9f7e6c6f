namespace BrakeBalance.Notebooks.Commands;

/// <summary>What a command tells the shell.</summary>
public static class ExitCode
{
    /// <summary>All went well.</summary>
    public const int Success = 0;

    /// <summary>The command did its work, and something in it failed.</summary>
    public const int Failed = 1;

    /// <summary>The command was not understood, or what it was given cannot be used; nothing was written.</summary>
    public const int BadInput = 2;
}
