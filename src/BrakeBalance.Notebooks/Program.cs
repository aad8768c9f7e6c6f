using BrakeBalance.Notebooks;
using BrakeBalance.Notebooks.Commands;
using BrakeBalance.Notebooks.Execution.Children;

if (args is [CellWorker.Command] && Console.IsInputRedirected)
{
    return CellWorker.Run();
}

AppDomain.CurrentDomain.UnhandledException += (_, fault) =>
{
    Console.Error.WriteLine(FaultReport.Write((Exception)fault.ExceptionObject, args));
    Environment.Exit(ExitCode.Fault);
};
return await CommandLine.RunAsync(args, Terminal.OfProcess());
