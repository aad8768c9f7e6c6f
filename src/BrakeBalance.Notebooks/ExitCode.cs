namespace BrakeBalance.Notebooks;

/// <summary>What a command tells the shell. README and <c>--help</c> say the same.</summary>
internal static class ExitCode
{
    /// <summary>The answer is given, whether or not it is good news for the car.</summary>
    public const int Success = 0;

    /// <summary>A part failed (a cell, a figure, a line of answers): it is named at the end, and the rest is done.</summary>
    public const int Failed = 1;

    /// <summary>The command was not understood, or what it was given cannot be used; nothing was written.</summary>
    public const int BadInput = 2;

    /// <summary>A fault of this program; a file that the message names has the details.</summary>
    public const int Fault = 70;

    /// <summary>Stopped by the user, as by Ctrl-C.</summary>
    public const int Stopped = 130;

    /// <summary>The meanings, a line each.</summary>
    public const string Meanings =
        """
        Exit codes: 0 answered; 1 a part failed, is named, and the rest is done; 2 the input cannot be used, every
        problem is told and nothing is written; 70 a fault of this program; 130 stopped by Ctrl-C.
        """;
}
