using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Abaxial.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "audit",
                columns: table => new
                {
                    Place = table.Column<long>(type: "bigint", nullable: false),
                    Moment = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Subject = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    From = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Detail = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_audit", x => x.Place);
                });

            migrationBuilder.CreateTable(
                name: "benches",
                columns: table => new
                {
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    SecretHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Made = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_benches", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "chains",
                columns: table => new
                {
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Place = table.Column<long>(type: "bigint", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_chains", x => x.Device);
                });

            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    Row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Id = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Place = table.Column<long>(type: "bigint", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Received = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Receipt = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_entries", x => x.Row);
                });

            migrationBuilder.CreateTable(
                name: "erasures",
                columns: table => new
                {
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_erasures", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "numbers",
                columns: table => new
                {
                    Number = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Year = table.Column<int>(type: "integer", nullable: false),
                    Running = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_numbers", x => new { x.Number, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    DisplayName = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Role = table.Column<string>(type: "text", nullable: false),
                    Areas = table.Column<List<string>>(type: "text[]", nullable: false),
                    PinHash = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    PinFailures = table.Column<int>(type: "integer", nullable: false),
                    TotpSecret = table.Column<byte[]>(type: "bytea", nullable: true),
                    IsTotpOn = table.Column<bool>(type: "boolean", nullable: false),
                    TotpLastStep = table.Column<long>(type: "bigint", nullable: false),
                    IsClosed = table.Column<bool>(type: "boolean", nullable: false),
                    Made = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    UserName = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    NormalizedUserName = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Email = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    NormalizedEmail = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    EmailConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    PasswordHash = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    SecurityStamp = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    ConcurrencyStamp = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    PhoneNumber = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    PhoneNumberConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    TwoFactorEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    LockoutEnd = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    LockoutEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    AccessFailedCount = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_people", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "person_words",
                columns: table => new
                {
                    Word = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_person_words", x => new { x.Word, x.Person });
                });

            migrationBuilder.CreateTable(
                name: "photograph_uses",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photograph_uses", x => new { x.Sha256, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "photographs",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Bytes = table.Column<long>(type: "bigint", nullable: false),
                    MediaType = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Width = table.Column<int>(type: "integer", nullable: true),
                    Height = table.Column<int>(type: "integer", nullable: true),
                    Received = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Receipt = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photographs", x => x.Sha256);
                });

            migrationBuilder.CreateTable(
                name: "sample_seals",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sample_seals", x => new { x.Sha256, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "samples",
                columns: table => new
                {
                    Key = table.Column<long>(type: "bigint", nullable: false),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Number = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Host = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    System = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Purpose = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Area = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Submitter = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    TakenBy = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    With = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Taken = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Promised = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    SnoozedUntil = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    IsOpen = table.Column<bool>(type: "boolean", nullable: false),
                    Standing = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    LateBlight = table.Column<double>(type: "double precision", nullable: true),
                    Leader = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    LeaderPercent = table.Column<int>(type: "integer", nullable: true),
                    Diagnosed = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Photographs = table.Column<int>(type: "integer", nullable: false),
                    FirstPhotograph = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Looks = table.Column<int>(type: "integer", nullable: false),
                    Waiting = table.Column<double>(type: "double precision", nullable: false),
                    Entries = table.Column<int>(type: "integer", nullable: false),
                    Knowledge = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_samples", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "samples_made",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_samples_made", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "sealed_texts",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Salt = table.Column<byte[]>(type: "bytea", nullable: false),
                    Text = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sealed_texts", x => x.Sha256);
                });

            migrationBuilder.CreateTable(
                name: "store",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false),
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Receipt = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_store", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "devices",
                columns: table => new
                {
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Role = table.Column<string>(type: "text", nullable: false),
                    TokenHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Made = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    LastUsed = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
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
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Purpose = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Role = table.Column<string>(type: "text", nullable: false),
                    Ends = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
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
                    CredentialId = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    UserId = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Data = table.Column<string>(type: "text", nullable: false)
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
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Means = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Made = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    LastSeen = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Ends = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Proven = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Browser = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                name: "IX_entries_Device_Place",
                table: "entries",
                columns: new[] { "Device", "Place" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_entries_Id",
                table: "entries",
                column: "Id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_entries_Sample",
                table: "entries",
                column: "Sample");

            migrationBuilder.CreateIndex(
                name: "IX_numbers_Sample",
                table: "numbers",
                column: "Sample");

            migrationBuilder.CreateIndex(
                name: "IX_numbers_Year_Running",
                table: "numbers",
                columns: new[] { "Year", "Running" });

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
                name: "IX_sealed_texts_Person",
                table: "sealed_texts",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_sessions_Person",
                table: "sessions",
                column: "Person");

            migrationBuilder.Sql(Search.WordIndex.CreatePostgres);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(Search.WordIndex.DropPostgres);

            migrationBuilder.DropTable(
                name: "audit");

            migrationBuilder.DropTable(
                name: "benches");

            migrationBuilder.DropTable(
                name: "chains");

            migrationBuilder.DropTable(
                name: "devices");

            migrationBuilder.DropTable(
                name: "entries");

            migrationBuilder.DropTable(
                name: "erasures");

            migrationBuilder.DropTable(
                name: "numbers");

            migrationBuilder.DropTable(
                name: "one_time_codes");

            migrationBuilder.DropTable(
                name: "passkeys");

            migrationBuilder.DropTable(
                name: "person_words");

            migrationBuilder.DropTable(
                name: "photograph_uses");

            migrationBuilder.DropTable(
                name: "photographs");

            migrationBuilder.DropTable(
                name: "recovery_codes");

            migrationBuilder.DropTable(
                name: "sample_seals");

            migrationBuilder.DropTable(
                name: "samples");

            migrationBuilder.DropTable(
                name: "samples_made");

            migrationBuilder.DropTable(
                name: "sealed_texts");

            migrationBuilder.DropTable(
                name: "sessions");

            migrationBuilder.DropTable(
                name: "store");

            migrationBuilder.DropTable(
                name: "people");
        }
    }
}
