using BrakeBalance.Notebooks.Commands;

AppDomain.CurrentDomain.UnhandledException += (_, fault) =>
{
    Console.Error.WriteLine(FaultReport.Write((Exception)fault.ExceptionObject, args));
    Environment.Exit(ExitCode.Fault);
};
return await CommandLine.RunAsync(args, Terminal.OfProcess());
