using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>Reads each referenced assembly once for all engines of the process.</summary>
/// <remarks>
/// Scripting asks at every cell for what assemblies need in turn, reads it whole each time, and has the compiler learn its types anew.
/// </remarks>
internal sealed class SharedReferences : MetadataReferenceResolver
{
    private static readonly ConcurrentDictionary<string, SharedReferences> ByFolder = new();
    private static ImmutableArray<MetadataReference> _first;

    private readonly ConcurrentDictionary<(string, string?, MetadataReferenceProperties),
        ImmutableArray<PortableExecutableReference>> _named = new();

    private readonly ConcurrentDictionary<AssemblyIdentity, PortableExecutableReference?> _missing = new();
    private readonly MetadataReferenceResolver _inner;

    private SharedReferences(MetadataReferenceResolver inner) => _inner = inner;

    /// <summary>That of all engines in this working directory, from which paths count; null before the first has run something.</summary>
    public static SharedReferences? Known => ByFolder.GetValueOrDefault(Directory.GetCurrentDirectory());

    public override bool ResolveMissingAssemblies => _inner.ResolveMissingAssemblies;

    /// <summary>What an engine begins with: the references of the first.</summary>
    public static ImmutableArray<MetadataReference> AtStart(ImmutableArray<MetadataReference> own)
    {
        ImmutableInterlocked.InterlockedInitialize(ref _first, own);
        return _first;
    }

    /// <summary>That of all engines in this working directory, which asks the resolver of the first that came here.</summary>
    public static SharedReferences Around(MetadataReferenceResolver own) =>
        own as SharedReferences ?? ByFolder.GetOrAdd(Directory.GetCurrentDirectory(), _ => new SharedReferences(own));

    public override ImmutableArray<PortableExecutableReference> ResolveReference(
        string reference, string? baseFilePath, MetadataReferenceProperties properties) =>
        _named.GetOrAdd((reference, baseFilePath, properties), _ => _inner.ResolveReference(reference, baseFilePath, properties));

    public override PortableExecutableReference? ResolveMissingAssembly(MetadataReference definition, AssemblyIdentity referenceIdentity) =>
        _missing.GetOrAdd(referenceIdentity, _ => _inner.ResolveMissingAssembly(definition, referenceIdentity));

    public override bool Equals(object? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => 1;
}
