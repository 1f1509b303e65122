using Abaxial.Cli;

return CommandLine.Run(
    args,
    Terminal.OfProcess(),
    WeighCommand.Create,
    KnowledgeCommand.Create,
    LedgerCommand.Create,
    BackupCommand.Create,
    RestoreCommand.Create);
