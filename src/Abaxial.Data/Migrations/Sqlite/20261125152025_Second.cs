using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Abaxial.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Second : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Receipt",
                table: "store",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "Height",
                table: "photographs",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "MediaType",
                table: "photographs",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Receipt",
                table: "photographs",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "Width",
                table: "photographs",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Receipt",
                table: "entries",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "audit",
                columns: table => new
                {
                    Place = table.Column<long>(type: "INTEGER", nullable: false),
                    Moment = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: true),
                    Subject = table.Column<string>(type: "TEXT", nullable: true),
                    From = table.Column<string>(type: "TEXT", nullable: true),
                    Detail = table.Column<string>(type: "TEXT", nullable: true),
                    Hash = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_audit", x => x.Place);
                });

            migrationBuilder.CreateTable(
                name: "benches",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", nullable: false),
                    Made = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_benches", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    DisplayName = table.Column<string>(type: "TEXT", nullable: false),
                    Role = table.Column<string>(type: "TEXT", nullable: false),
                    Areas = table.Column<string>(type: "TEXT", nullable: false),
                    PinHash = table.Column<string>(type: "TEXT", nullable: true),
                    PinFailures = table.Column<int>(type: "INTEGER", nullable: false),
                    TotpSecret = table.Column<byte[]>(type: "BLOB", nullable: true),
                    IsTotpOn = table.Column<bool>(type: "INTEGER", nullable: false),
                    TotpLastStep = table.Column<long>(type: "INTEGER", nullable: false),
                    IsClosed = table.Column<bool>(type: "INTEGER", nullable: false),
                    Made = table.Column<DateTime>(type: "TEXT", nullable: false),
                    UserName = table.Column<string>(type: "TEXT", nullable: true),
                    NormalizedUserName = table.Column<string>(type: "TEXT", nullable: true),
                    Email = table.Column<string>(type: "TEXT", nullable: true),
                    NormalizedEmail = table.Column<string>(type: "TEXT", nullable: true),
                    EmailConfirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    PasswordHash = table.Column<string>(type: "TEXT", nullable: true),
                    SecurityStamp = table.Column<string>(type: "TEXT", nullable: true),
                    ConcurrencyStamp = table.Column<string>(type: "TEXT", nullable: true),
                    PhoneNumber = table.Column<string>(type: "TEXT", nullable: true),
                    PhoneNumberConfirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    TwoFactorEnabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    LockoutEnd = table.Column<DateTime>(type: "TEXT", nullable: true),
                    LockoutEnabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    AccessFailedCount = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_people", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "person_words",
                columns: table => new
                {
                    Word = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_person_words", x => new { x.Word, x.Person });
                });

            migrationBuilder.CreateTable(
                name: "photograph_uses",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    Sample = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photograph_uses", x => new { x.Sha256, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "sample_seals",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    Sample = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sample_seals", x => new { x.Sha256, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "samples",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false),
                    Sample = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<string>(type: "TEXT", nullable: true),
                    Host = table.Column<string>(type: "TEXT", nullable: true),
                    System = table.Column<string>(type: "TEXT", nullable: true),
                    Purpose = table.Column<string>(type: "TEXT", nullable: true),
                    Area = table.Column<string>(type: "TEXT", nullable: true),
                    Submitter = table.Column<string>(type: "TEXT", nullable: true),
                    TakenBy = table.Column<string>(type: "TEXT", nullable: true),
                    With = table.Column<string>(type: "TEXT", nullable: true),
                    Taken = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Promised = table.Column<DateTime>(type: "TEXT", nullable: true),
                    SnoozedUntil = table.Column<DateTime>(type: "TEXT", nullable: true),
                    IsOpen = table.Column<bool>(type: "INTEGER", nullable: false),
                    Standing = table.Column<string>(type: "TEXT", nullable: true),
                    LateBlight = table.Column<double>(type: "REAL", nullable: true),
                    Leader = table.Column<string>(type: "TEXT", nullable: true),
                    LeaderPercent = table.Column<int>(type: "INTEGER", nullable: true),
                    Diagnosed = table.Column<string>(type: "TEXT", nullable: false),
                    Photographs = table.Column<int>(type: "INTEGER", nullable: false),
                    FirstPhotograph = table.Column<string>(type: "TEXT", nullable: true),
                    Looks = table.Column<int>(type: "INTEGER", nullable: false),
                    Waiting = table.Column<double>(type: "REAL", nullable: false),
                    Entries = table.Column<int>(type: "INTEGER", nullable: false),
                    Knowledge = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_samples", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "samples_made",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_samples_made", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "devices",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Role = table.Column<string>(type: "TEXT", nullable: false),
                    TokenHash = table.Column<string>(type: "TEXT", nullable: false),
                    Made = table.Column<DateTime>(type: "TEXT", nullable: false),
                    LastUsed = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_devices", x => x.Id);
                    table.ForeignKey(
                        name: "FK_devices_people_Person",
                        column: x => x.Person,
                        principalTable: "people",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "one_time_codes",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Purpose = table.Column<string>(type: "TEXT", nullable: false),
                    Role = table.Column<string>(type: "TEXT", nullable: false),
                    Ends = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_one_time_codes", x => x.Id);
                    table.ForeignKey(
                        name: "FK_one_time_codes_people_Person",
                        column: x => x.Person,
                        principalTable: "people",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "passkeys",
                columns: table => new
                {
                    CredentialId = table.Column<byte[]>(type: "BLOB", maxLength: 1024, nullable: false),
                    UserId = table.Column<string>(type: "TEXT", nullable: true),
                    Data = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_passkeys", x => x.CredentialId);
                    table.ForeignKey(
                        name: "FK_passkeys_people_UserId",
                        column: x => x.UserId,
                        principalTable: "people",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "recovery_codes",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recovery_codes", x => x.Id);
                    table.ForeignKey(
                        name: "FK_recovery_codes_people_Person",
                        column: x => x.Person,
                        principalTable: "people",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "sessions",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Means = table.Column<string>(type: "TEXT", nullable: false),
                    Made = table.Column<DateTime>(type: "TEXT", nullable: false),
                    LastSeen = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Ends = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Proven = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Browser = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sessions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_sessions_people_Person",
                        column: x => x.Person,
                        principalTable: "people",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_benches_SecretHash",
                table: "benches",
                column: "SecretHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_devices_Person",
                table: "devices",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_devices_TokenHash",
                table: "devices",
                column: "TokenHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_one_time_codes_Person",
                table: "one_time_codes",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_passkeys_UserId",
                table: "passkeys",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_people_NormalizedUserName",
                table: "people",
                column: "NormalizedUserName",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_person_words_Person",
                table: "person_words",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_recovery_codes_Person",
                table: "recovery_codes",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_sample_seals_Person",
                table: "sample_seals",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_sample_seals_Sample",
                table: "sample_seals",
                column: "Sample");

            migrationBuilder.CreateIndex(
                name: "IX_samples_IsOpen_Waiting_Key",
                table: "samples",
                columns: new[] { "IsOpen", "Waiting", "Key" });

            migrationBuilder.CreateIndex(
                name: "IX_samples_Sample",
                table: "samples",
                column: "Sample",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sessions_Person",
                table: "sessions",
                column: "Person");

            migrationBuilder.Sql(Search.WordIndex.CreateSqlite);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(Search.WordIndex.DropSqlite);

            migrationBuilder.DropTable(
                name: "audit");

            migrationBuilder.DropTable(
                name: "benches");

            migrationBuilder.DropTable(
                name: "devices");

            migrationBuilder.DropTable(
                name: "one_time_codes");

            migrationBuilder.DropTable(
                name: "passkeys");

            migrationBuilder.DropTable(
                name: "person_words");

            migrationBuilder.DropTable(
                name: "photograph_uses");

            migrationBuilder.DropTable(
                name: "recovery_codes");

            migrationBuilder.DropTable(
                name: "sample_seals");

            migrationBuilder.DropTable(
                name: "samples");

            migrationBuilder.DropTable(
                name: "samples_made");

            migrationBuilder.DropTable(
                name: "sessions");

            migrationBuilder.DropTable(
                name: "people");

            migrationBuilder.DropColumn(
                name: "Receipt",
                table: "store");

            migrationBuilder.DropColumn(
                name: "Height",
                table: "photographs");

            migrationBuilder.DropColumn(
                name: "MediaType",
                table: "photographs");

            migrationBuilder.DropColumn(
                name: "Receipt",
                table: "photographs");

            migrationBuilder.DropColumn(
                name: "Width",
                table: "photographs");

            migrationBuilder.DropColumn(
                name: "Receipt",
                table: "entries");
        }
    }
}
