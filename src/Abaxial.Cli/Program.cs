using Abaxial.Cli;

return CommandLine.Run(
    args,
    Terminal.OfProcess(),
    WeighCommand.Create,
    WeatherCommand.Create,
    KnowledgeCommand.Create,
    LedgerCommand.Create,
    BackupCommand.Create,
    RestoreCommand.Create,
    ServeCommand.Create);
