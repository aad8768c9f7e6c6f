using System.ComponentModel;
using System.Diagnostics;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Pictures as a film, made by the system's ffmpeg where it is installed.</summary>
internal static class Film
{
    /// <summary>What to tell a user whose system has no ffmpeg.</summary>
    public const string Missing = "MP4 needs ffmpeg, which was not found on the PATH. Install it.";

    /// <summary>Path of ffmpeg; null where there is none.</summary>
    public static string? Executable => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
        .SelectMany(folder => new[] { Path.Combine(folder, "ffmpeg"), Path.Combine(folder, "ffmpeg.exe") }).FirstOrDefault(File.Exists);

    /// <summary>The film: H.264, 4:2:0, an even number of pixels either way, as players everywhere want it.</summary>
    /// <param name="pictures">The pictures, PNG, in their order.</param>
    /// <param name="milliseconds">How long each stays.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <returns>MP4 data, the same for the same pictures.</returns>
    /// <exception cref="IOException">ffmpeg is missing or fails.</exception>
    public static async Task<byte[]> Mp4Async(IEnumerable<byte[]> pictures, int milliseconds, CancellationToken cancellation)
    {
        string file = Path.Combine(Path.GetTempPath(), $"brake-balance-{Guid.NewGuid():N}.mp4");
        string rate = Invariant.Text($"1000/{milliseconds}");
        try
        {
            // It reads from our pipe, so it ends with us.
            using Process process = Process.Start(new ProcessStartInfo(Executable ?? throw new IOException(Missing),
            [
                "-hide_banner", "-loglevel", "error", "-f", "image2pipe", "-framerate", rate, "-c:v", "png", "-i", "pipe:0",
                "-vf", "pad=ceil(iw/2)*2:ceil(ih/2)*2:color=white,format=yuv420p", "-r", "25", "-c:v", "libx264", "-preset", "medium",
                "-crf", "18", "-threads", "1", "-fflags", "+bitexact", "-flags:v", "+bitexact", "-map_metadata", "-1",
                "-movflags", "+faststart", file,
            ])
            {
                RedirectStandardInput = true,
                RedirectStandardError = true,
            })!;
            Task<string> said = process.StandardError.ReadToEndAsync(cancellation);
            try
            {
                foreach (byte[] picture in pictures)
                {
                    await process.StandardInput.BaseStream.WriteAsync(picture, cancellation).ConfigureAwait(false);
                }

                process.StandardInput.Close();
            }
            catch (IOException)
            {
                // It has ended before it had read all; what it said tells why.
            }

            await process.WaitForExitAsync(cancellation).ConfigureAwait(false);
            string words = await said.ConfigureAwait(false);
            return process.ExitCode == 0 ? await File.ReadAllBytesAsync(file, cancellation).ConfigureAwait(false)
                : throw new IOException($"ffmpeg could not make the film: {words.Trim()}");
        }
        catch (Win32Exception exception)
        {
            throw new IOException("ffmpeg does not start.", exception);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
