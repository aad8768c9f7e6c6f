namespace BrakeBalance.Notebooks.Execution;

/// <summary>What runs the cells.</summary>
public enum EngineKind
{
    /// <summary>The embedded interactive kernel, the same that Jupyter clients use.</summary>
    Interactive,

    /// <summary>Plain C# scripting, which needs no kernel.</summary>
    Script,
}
