using System.Reflection;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Keeps the details of a fault of this program in a file, so that the terminal needs one sentence only.</summary>
internal static class FaultReport
{
    /// <summary>Writes the details and says where they are.</summary>
    public static string Write(Exception fault, IReadOnlyList<string> arguments)
    {
        string text = string.Join('\n',
            $"Version: {typeof(FaultReport).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion}",
            $"System: {Environment.OSVersion}, .NET {Environment.Version}",
            $"Command: {string.Join(' ', arguments.Select(word => $"\"{word}\""))}",
            fault.ToString());
        try
        {
            // A name that nobody can guess and a file that is new: in a folder that all users share, a known name could be a trap.
            string path = Path.Combine(Path.GetTempPath(), Invariant.Text($"brake-balance-fault-{Guid.NewGuid():N}.txt"));
            using (var writer = new StreamWriter(new FileStream(path, FileMode.CreateNew, FileAccess.Write)))
            {
                writer.WriteLine(VisibleText.Of(text));
            }

            return $"A fault of this program, not of your input; the details are in {path}.";
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return $"A fault of this program, not of your input ({fault.GetType().Name}); "
                + $"its details could not be written to {Path.GetTempPath()}.";
        }
    }
}
