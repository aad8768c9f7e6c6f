using System.Text;

namespace BrakeBalance.Measurements;

/// <summary>The text of a log in whatever encoding it was written.</summary>
internal static class LogText
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Opens a file: UTF-8 or UTF-16 by its mark or its bytes, Latin-1 where the bytes are no UTF-8.</summary>
    public static TextReader Open(string path) => new StringReader(Decode(File.ReadAllBytes(path)));

    public static string Decode(byte[] bytes)
    {
        int even = 0, odd = 0, looked = Math.Min(bytes.Length, 4096);
        for (int i = 0; i < looked; i++)
        {
            (even, odd) = bytes[i] != 0 ? (even, odd) : i % 2 == 0 ? (even + 1, odd) : (even, odd + 1);
        }

        // Plain letters and figures leave every second byte of UTF-16 empty.
        Encoding? wide = bytes is [0xFF, 0xFE, ..] || odd > looked / 4 && even < odd / 8 ? Encoding.Unicode
            : bytes is [0xFE, 0xFF, ..] || even > looked / 4 && odd < even / 8 ? Encoding.BigEndianUnicode : null;
        if (wide is not null)
        {
            return wide.GetString(bytes).TrimStart('\uFEFF');
        }

        try
        {
            return Strict.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }
}
